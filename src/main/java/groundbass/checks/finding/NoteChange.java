package groundbass.checks.finding;

import groundbass.score.Arrival;
import groundbass.score.Note;
import groundbass.score.Ornaments;
import groundbass.score.Place;
import groundbass.score.Technique;
import java.util.EnumSet;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/** What a repair does to one note. */
public sealed interface NoteChange {
    /** The note, changed. */
    Note of(Note note);

    /** Played elsewhere. */
    record ToPlace(Place place) implements NoteChange {
        public ToPlace {
            Objects.requireNonNull(place);
        }

        @Override
        public Note of(Note note) {
            return note.at(place);
        }
    }

    /** Reached by another movement of the fretting hand, from the same source. */
    record ToArrival(Arrival.Kind kind) implements NoteChange {
        public ToArrival {
            Objects.requireNonNull(kind);
        }

        @Override
        public Note of(Note note) {
            return note.with(
                    new Arrival(kind, note.arrival().map(Arrival::graceFret).orElseGet(OptionalInt::empty)));
        }
    }

    /** Struck anew, without hammer, pull or slide. */
    record ToStroke(Technique technique) implements NoteChange {
        public ToStroke {
            Objects.requireNonNull(technique);
        }

        @Override
        public Note of(Note note) {
            return new Note(
                    note.onset(),
                    note.length(),
                    note.place(),
                    Optional.of(technique),
                    Optional.empty(),
                    note.ornaments());
        }
    }

    /** Without a sign. */
    record Without(Ornaments.Mark mark) implements NoteChange {
        public Without {
            Objects.requireNonNull(mark);
        }

        @Override
        public Note of(Note note) {
            var old = note.ornaments();
            var marks = EnumSet.noneOf(Ornaments.Mark.class);
            old.marks().stream().filter(other -> other != mark).forEach(marks::add);
            return note.withOrnaments(new Ornaments(
                    marks,
                    old.bend(),
                    old.trill(),
                    old.harmonic(),
                    old.slideIn(),
                    old.slideOff(),
                    old.spread(),
                    old.finger(),
                    old.spelling()));
        }
    }
}
