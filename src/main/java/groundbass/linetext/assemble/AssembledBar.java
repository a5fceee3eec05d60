package groundbass.linetext.assemble;

import groundbass.score.Bar;
import groundbass.score.Changes;
import groundbass.score.ChordAt;
import groundbass.score.Copy;
import groundbass.score.Direction;
import groundbass.score.Repeats;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A bar whose sounds have their times; a later bar may still hold them on. */
final class AssembledBar {
    final BarExtent extent;
    final List<SoundingNote> sounds = new ArrayList<>();
    final List<Direction> directions = new ArrayList<>();
    final List<ChordAt> chords = new ArrayList<>();
    Optional<Copy> copy = Optional.empty();

    AssembledBar(BarExtent extent) {
        this.extent = extent;
    }

    Bar toBar(Changes changes, Repeats repeats) {
        return new Bar(
                extent.from(),
                extent.to(),
                changes,
                repeats,
                chords,
                sounds.stream().map(SoundingNote::note).toList(),
                directions,
                copy);
    }

    Copying.Original original() {
        return new Copying.Original(
                extent.from(),
                extent.to(),
                sounds.stream().map(sound -> sound.noteUntil(extent.end())).toList(),
                directions,
                chords);
    }
}
