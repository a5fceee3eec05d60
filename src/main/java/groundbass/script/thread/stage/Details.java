package groundbass.script.thread.stage;

import groundbass.script.grammar.Constituent;
import groundbass.theory.NoteName;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** What the units of a clause say of notes, one after another: once a triplet was named, its quavers are shorter ones. */
public final class Details {
    private final Stage stage;
    private boolean tupled;

    Details(Stage stage) {
        this.stage = stage;
    }

    /** Empty for a unit that is no part of a note. */
    Optional<List<Part>> of(Constituent unit) {
        if (unit instanceof Constituent.Name name) {
            return Optional.of(List.of(name(name.name())));
        }
        if (unit instanceof Constituent.Place place) {
            return place(place);
        }
        if (unit instanceof Constituent.Value value) {
            return Optional.of(List.of(Part.length(value.length(), stage.timeline(), tupled)));
        }
        if (unit instanceof Constituent.Played played) {
            return Optional.of(List.of(Part.manner(played.manner())));
        }
        if (unit instanceof Constituent.Dead) {
            return Optional.of(List.of(Part.dead()));
        }
        if (unit instanceof Constituent.Short) {
            return Optional.of(List.of(Part.shortened()));
        }
        if (unit instanceof Constituent.Open) {
            return Optional.of(List.of(Part.fret(0)));
        }
        if (unit instanceof Constituent.Octaves octaves) {
            return Optional.of(List.of(octave(octaves.many())));
        }
        if (unit instanceof Constituent.Triplet) {
            tupled = true;
            return Optional.of(List.of(Part.tuplet()));
        }
        if (unit instanceof Constituent.Lasting lasting) {
            return Optional.of(List.of(lasting(lasting)));
        }
        return unit instanceof Constituent.ChordTone tone ? Optional.of(List.of(degree(tone))) : Optional.empty();
    }

    private Part lasting(Constituent.Lasting said) {
        return new Part(Part.Kind.LENGTH, at -> {
            var whole = stage.timeline().whole(at.bar());
            var meter = stage.timeline().at(at.bar()).meter();
            var sounding = at.note().length();
            return said.ofBar()
                    ? sounding.equals(whole.to().minus(whole.from()).times(said.amount()))
                    : sounding.equals(meter.count().times(said.amount()))
                            || sounding.equals(meter.pulse().times(said.amount()));
        });
    }

    private Part degree(Constituent.ChordTone tone) {
        return new Part(Part.Kind.DEGREE, at -> Degrees.of(at, stage)
                .filter(degree -> tone.exact().map(degree::equals).orElse(degree.number() == tone.number()))
                .isPresent());
    }

    /** "The low G": not the highest of its name, where the line has it in several octaves. */
    Part register(boolean high) {
        return new Part(Part.Kind.REGISTER, at -> {
            var midi = stage.midi(at);
            var alike = stage.everyNote().stream()
                    .flatMap(other -> stage.midi(other).stream())
                    .filter(other -> midi.isPresent() && Math.floorMod(other - midi.get(), 12) == 0)
                    .sorted()
                    .distinct()
                    .toList();
            int edge = high ? 0 : alike.size() - 1;
            return alike.size() < 2 || !alike.get(edge).equals(midi.get());
        });
    }

    private Part name(NoteName name) {
        return Part.name(name, stage.timeline(), stage.neck());
    }

    /** Some note before it in its bar lies so many octaves away. */
    private Part octave(int many) {
        return new Part(Part.Kind.OCTAVE, at -> stage.notes(at.bar()).stream()
                .filter(other -> other.note().onset().isBefore(at.note().onset()))
                .anyMatch(other -> stage.midi(at)
                        .flatMap(midi -> stage.midi(other).map(before -> Math.abs(midi - before) == 12 * many))
                        .orElse(false)));
    }

    private Optional<List<Part>> place(Constituent.Place place) {
        var parts = new ArrayList<Part>();
        if (place.hasString()) {
            var string = string(place, stage);
            if (string.isEmpty()) {
                return Optional.empty();
            }
            parts.add(Part.string(string.getAsInt()));
        }
        place.fret().ifPresent(fret -> parts.add(Part.fret(fret)));
        boolean open = place.fret().orElse(-1) == 0;
        place.string().filter(name -> open).ifPresent(name -> parts.add(name(name)));
        return Optional.of(parts);
    }

    /** The number of a string, 1 the highest; empty where the bass has none such. */
    public static OptionalInt string(Constituent.Place place, Stage stage) {
        if (place.string().isPresent()) {
            return stage.tuning()
                    .numberOf(place.string().get())
                    .map(OptionalInt::of)
                    .orElse(OptionalInt.empty());
        }
        return place.number().stream()
                .filter(number -> number >= 1 && number <= stage.tuning().size())
                .findFirst();
    }
}
