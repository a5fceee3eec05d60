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
    final Frame frame;
    final List<Sound> sounds = new ArrayList<>();
    final List<Direction> directions = new ArrayList<>();
    final List<ChordAt> chords = new ArrayList<>();
    Optional<Copy> copy = Optional.empty();

    AssembledBar(Frame frame) {
        this.frame = frame;
    }

    Bar toBar(Changes changes, Repeats repeats) {
        return new Bar(
                frame.from(),
                frame.to(),
                changes,
                repeats,
                chords,
                sounds.stream().map(Sound::note).toList(),
                directions,
                copy);
    }

    Copying.Original original() {
        return new Copying.Original(
                frame.from(),
                frame.to(),
                sounds.stream().map(sound -> sound.noteUntil(frame.end())).toList(),
                directions,
                chords);
    }
}
