package groundbass.script;

import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Position;
import groundbass.script.checking.BarsCheck;
import groundbass.script.checking.HeadCheck;
import groundbass.script.checking.IntervalCheck;
import groundbass.script.checking.NoteCheck;
import groundbass.script.checking.Places;
import groundbass.script.checking.RestCheck;
import groundbass.script.checking.Right;
import groundbass.script.checking.Timeline;
import groundbass.script.checking.Verdict;
import groundbass.script.claims.Claim;
import groundbass.script.claims.Manner;
import groundbass.script.claims.Spoken;
import groundbass.script.claims.Where;
import groundbass.script.grammar.TalkHearing;
import groundbass.script.reading.SentenceReader;
import groundbass.script.thread.talk.Talk;
import groundbass.script.words.Lexicon;
import groundbass.script.words.Words;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What a script says about a line, and whether it is so. Time is linear in the script's length.
 *
 * @param statements in the order of the script
 */
public record Proofreading(List<Statement> statements) {
    /** Characters that are read; what comes after is left unread. */
    public static final int LONGEST = 400_000;

    /** Characters within which a note and its place are said in one breath. */
    private static final int CLOSE = 36;

    public Proofreading {
        statements = List.copyOf(statements);
    }

    /** @param language the script's: English or German, anything else is read as English */
    public static Proofreading of(String script, Line line, Locale language) {
        String text = script.length() > LONGEST ? script.substring(0, LONGEST) : script;
        var reader = new SentenceReader(line, Lexicon.of(language));
        var timeline = new Timeline(line);
        var hearing = TalkHearing.of(text, line.header().title(), language);
        boolean unpunctuated = hearing.unpunctuated();
        var talk = new Talk(timeline, hearing);
        // German puts its verb and its "not" last, so that what is picked out of a sentence proves nothing
        boolean german = language.getLanguage().equals(Locale.GERMAN.getLanguage());
        var checks = new Checking(timeline, german || unpunctuated ? Trust.NONE : Trust.ALL);
        var statements = new ArrayList<Statement>();
        for (var sentence : Words.sentences(text)) {
            var loose = reader.read(sentence).stream().map(checks::check).toList();
            statements.addAll(Weighing.of(talk.hear(sentence), loose, unpunctuated));
        }
        statements.sort(Comparator.comparingInt(Statement::from).thenComparingInt(Statement::to));
        return new Proofreading(statements);
    }

    public long agreeing() {
        return statements.stream().filter(Statement::agrees).count();
    }

    public List<Statement> contradictions() {
        return statements.stream().filter(Statement::contradicts).toList();
    }

    public long readInPart() {
        return statements.stream().filter(Statement::isReadInPart).count();
    }

    public long untold() {
        return statements.size() - agreeing() - readInPart() - contradictions().size();
    }

    /** Which contradictions are believed of what was picked out of a sentence. */
    private enum Trust {
        ALL,
        /** Where name, string and fret stand close together. */
        PLAIN,
        NONE
    }

    /** Every kind of claim to its check. */
    private record Checking(
            Timeline timeline,
            Trust trust,
            NoteCheck notes,
            RestCheck rests,
            BarsCheck bars,
            IntervalCheck intervals,
            HeadCheck heads) {
        Checking(Timeline timeline, Trust trust) {
            this(
                    timeline,
                    trust,
                    new NoteCheck(timeline),
                    new RestCheck(timeline),
                    new BarsCheck(timeline),
                    new IntervalCheck(timeline),
                    new HeadCheck(timeline));
        }

        Statement check(Spoken spoken) {
            var verdict = verdict(spoken.claim());
            boolean guessed = verdict instanceof Verdict.Contradicts wrong
                    && (isLoose(spoken.claim()) || !isBelieved(spoken, wrong.right()));
            return new Statement(
                    spoken.from(), spoken.to(), guessed ? Verdict.CANNOT_TELL : verdict, position(spoken.claim()));
        }

        private boolean isBelieved(Spoken spoken, Right right) {
            return switch (trust) {
                case ALL -> true;
                case PLAIN -> isPlain(spoken, right);
                case NONE -> false;
            };
        }

        /** Ghost notes and harmonics are called by more than one name: softly struck or dead, as stopped or as sounding. */
        private static boolean isLoose(Claim claim) {
            return claim instanceof Claim.NoteIs note
                    && note.note().manners().stream()
                            .anyMatch(manner -> manner == Manner.GHOST || manner == Manner.HARMONIC);
        }

        /** Whether name, string and fret stand so close together that they are of one note whatever the sentence is. */
        private static boolean isPlain(Spoken spoken, Right right) {
            return spoken.to() - spoken.from() <= CLOSE
                    && right instanceof Right.NameOfPlace
                    && spoken.claim() instanceof Claim.NoteIs note
                    && note.note().many() == 1;
        }

        private Verdict verdict(Claim claim) {
            if (claim instanceof Claim.NoteIs note) {
                return notes.check(note);
            }
            if (claim instanceof Claim.RestIs rest) {
                return rests.check(rest);
            }
            if (claim instanceof Claim.SameBars same) {
                return bars.check(same);
            }
            if (claim instanceof Claim.OctavesApart apart) {
                return intervals.check(apart);
            }
            if (claim instanceof Claim.OctaveOfName octave) {
                return intervals.check(octave);
            }
            return head(claim);
        }

        private Verdict head(Claim claim) {
            if (claim instanceof Claim.KeyIs key) {
                return heads.check(key);
            }
            if (claim instanceof Claim.TonicIs tonic) {
                return heads.check(tonic);
            }
            if (claim instanceof Claim.MeterIs meter) {
                return heads.check(meter);
            }
            if (claim instanceof Claim.TempoIs tempo) {
                return heads.check(tempo);
            }
            if (claim instanceof Claim.FeelIs feel) {
                return heads.check(feel);
            }
            if (claim instanceof Claim.ChordIs chord) {
                return heads.check(chord);
            }
            return heads.check((Claim.BarCountIs) claim);
        }

        private Optional<Position> position(Claim claim) {
            if (claim instanceof Claim.NoteIs note) {
                return position(note.where());
            }
            if (claim instanceof Claim.RestIs rest) {
                return position(rest.where());
            }
            return claim instanceof Claim.SameBars same
                    ? position(Where.UNSAID.withBars(same.bars(), false))
                    : Optional.empty();
        }

        private Optional<Position> position(Where where) {
            boolean known = where.hasBars() && where.bars().stream().allMatch(timeline::has);
            if (!known) {
                return Optional.empty();
            }
            var areas = new Places(timeline).readings(where);
            return areas.stream()
                    .findFirst()
                    .map(area -> area.stretches().get(0).start())
                    .or(() -> Optional.of(new Position(where.bars().get(0), Fraction.ZERO)));
        }
    }
}
