package groundbass.script.reading;

import groundbass.script.claims.Chunk;
import groundbass.script.claims.NamedPlace;
import groundbass.script.claims.Said;
import groundbass.script.words.Sense;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Leaves out of a sentence what is not claimed: what is denied, imagined, asked, taken back, or named only to say that
 * something else holds.
 */
final class Reality {
    private Reality() {}

    static List<Said> claimed(List<Said> sentence) {
        if (sentence.stream().anyMatch(said -> said.is(Sense.QUESTION))) {
            return List.of();
        }
        var kept = unreal(sentence);
        kept = conditions(kept);
        kept = takenBack(kept);
        return denied(kept);
    }

    /** What is imagined, up to a "but" that comes back to what is. */
    private static List<Said> unreal(List<Said> sentence) {
        int unreal = lastIndex(sentence, Sense.UNREAL);
        if (unreal < 0) {
            return sentence;
        }
        for (int i = unreal; i < sentence.size(); i++) {
            if (sentence.get(i).is(Sense.BUT) || sentence.get(i).is(Sense.SEMICOLON)) {
                var kept = new ArrayList<>(sentence.subList(0, i).stream()
                        .filter(said -> said.is(Chunk.Bars.class))
                        .toList());
                kept.addAll(sentence.subList(i + 1, sentence.size()));
                return kept;
            }
        }
        return List.of();
    }

    private static int lastIndex(List<Said> sentence, Sense sense) {
        for (int i = sentence.size() - 1; i >= 0; i--) {
            if (sentence.get(i).is(sense)) {
                return i;
            }
        }
        return -1;
    }

    /** An "if" clause places what follows, but claims nothing. */
    private static List<Said> conditions(List<Said> sentence) {
        var kept = new ArrayList<Said>();
        boolean inside = false;
        for (var said : sentence) {
            inside = (inside || said.is(Sense.IF)) && !said.is(Sense.COMMA) && !said.is(Sense.THEN);
            if (!inside || isPlace(said)) {
                kept.add(said);
            }
        }
        return kept;
    }

    private static boolean isPlace(Said said) {
        return said.is(Chunk.Bars.class) || said.is(Chunk.BarAt.class) || said.is(Chunk.Beats.class);
    }

    private static boolean isCore(Said said) {
        return !said.is(Chunk.Tie.class);
    }

    /** "The fifth, sorry, the seventh fret": what stands just before the apology. */
    private static List<Said> takenBack(List<Said> sentence) {
        var kept = new ArrayList<Said>();
        for (var said : sentence) {
            if (said.is(Sense.OOPS)) {
                while (!kept.isEmpty() && !isCore(kept.get(kept.size() - 1))) {
                    kept.remove(kept.size() - 1);
                }
                if (!kept.isEmpty()) {
                    kept.remove(kept.size() - 1);
                }
            } else {
                kept.add(said);
            }
        }
        return kept;
    }

    /** Whether something else than the bar is denied, so that the bar still holds. */
    private static boolean denies(List<Said> kept, List<Said> sentence, Said bars) {
        return sentence.subList(0, sentence.indexOf(bars)).stream()
                .filter(said -> !kept.contains(said))
                .anyMatch(said -> said.is(Chunk.Places.class)
                        || said.is(Chunk.Notes.class)
                        || said.is(Chunk.Played.class)
                        || said.is(Chunk.Silence.class));
    }

    private static Optional<Said> string(Said said) {
        if (!(said.chunk() instanceof Chunk.Places places) || places.spots().size() != 1) {
            return Optional.empty();
        }
        var spot = places.spots().get(0);
        return spot.isWhole()
                ? Optional.of(new Said(
                        new Chunk.Places(
                                List.of(NamedPlace.onString(spot.string().getAsInt())), false),
                        said.first(),
                        said.after(),
                        said.from(),
                        said.to()))
                : Optional.empty();
    }

    private static boolean isFollowedByFret(List<Said> sentence, Said denied) {
        return sentence.subList(sentence.indexOf(denied) + 1, sentence.size()).stream()
                .map(Said::chunk)
                .filter(Chunk.Places.class::isInstance)
                .anyMatch(
                        chunk -> ((Chunk.Places) chunk).spots().get(0).string().isEmpty());
    }

    /** What stands between a "not" and the next place where a thought may end; "instead of" denies one thing only. */
    private static List<Said> denied(List<Said> sentence) {
        var kept = new ArrayList<Said>();
        boolean not = false;
        boolean denied = false;
        boolean instead = false;
        for (var said : sentence) {
            boolean end =
                    said.is(Sense.COMMA) || said.is(Sense.BUT) || said.is(Sense.SEMICOLON) || said.is(Sense.COLON);
            boolean still = denied && said.is(Sense.THAT); // "don't play the C, that clashes"
            denied = not && said.is(Sense.COMMA);
            not = (not || said.is(Sense.NOT) || still) && !end;
            instead |= said.is(Sense.INSTEAD);
            boolean bars = said.is(Chunk.Bars.class) && denies(kept, sentence, said);
            if (not && string(said).isPresent() && isFollowedByFret(sentence, said)) {
                kept.add(string(said).get()); // "not the fifth fret of the E string, the third"
            }
            boolean skipped = (not && !bars) || (instead && isCore(said));
            instead &= !isCore(said) && !end;
            if (!skipped && !said.is(Sense.NOT) && !said.is(Sense.INSTEAD)) {
                kept.add(said);
            }
        }
        return kept;
    }
}
