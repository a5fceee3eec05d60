package groundbass.braille;

import groundbass.braille.CellGroup.Gap;
import groundbass.score.Arrival;
import groundbass.score.Fraction;
import groundbass.score.Note;
import groundbass.score.Ornaments.Bend;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Ornaments.Spread;
import groundbass.score.Technique;
import groundbass.theory.Key;
import groundbass.theory.NoteName;
import groundbass.theory.Pitch;
import groundbass.writing.Element.Chord;
import groundbass.writing.Head;
import groundbass.writing.Head.Accidental;
import groundbass.writing.NoteValue;
import groundbass.writing.NoteValue.Base;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * Notes that are struck together: the lowest as a note, the others as intervals above it (rule: braille-intervals), and
 * around them what is said of them, in the order of rule: braille-order-of-signs. Mutable; one for a line.
 */
final class ChordCells {
    /** What is wider is parted between its signs, so that no row is too narrow for it. */
    private static final int WIDEST = 30;

    private static final NoteValue GRACE = NoteValue.of(Base.EIGHTH);
    private static final int OCTAVE = 7;

    private final BrailleKey legend;
    private final Joins joins;
    private final boolean places;
    private final Melody melody = new Melody();
    private final HandPlace hand;
    private Optional<Technique> stroke;

    /** @param places whether strings, frets and strokes are told */
    ChordCells(BrailleKey legend, Joins joins, Technique style, boolean places) {
        this.legend = legend;
        this.joins = joins;
        this.places = places;
        this.hand = new HandPlace(legend);
        this.stroke = Optional.of(style);
    }

    /** The next note has its octave marked. */
    void interrupt() {
        melody.interrupt();
    }

    /** The next note has its octave marked and its place told. */
    void interruptAll() {
        melody.interrupt();
        hand.forget();
    }

    /**
     * @param before signs between words and note: of value and tuplet
     * @param words what is said at its moment
     */
    List<CellGroup> of(Chord chord, Cells words, Cells before, boolean beat, Key key, VoiceSigns signs) {
        var heads = upward(chord);
        var said = words.plus(words(heads));
        if (!said.isEmpty() || spread(heads).isPresent()) {
            melody.interrupt();
        }
        var pieces = new ArrayList<Piece>();
        pieces.add(place(heads.get(0), before.plus(strokes(heads)).plus(rolled(heads))));
        heads.stream().flatMap(head -> grace(head, signs).stream()).forEach(pieces::add);
        pieces.add(note(heads, chord.value(), key, signs));
        for (int i = 1; i < heads.size(); i++) {
            pieces.add(Piece.same(interval(heads, i, key, signs)));
        }
        pieces.add(Piece.same(behind(heads)));
        return units(said, pieces, beat);
    }

    private static List<Head> upward(Chord chord) {
        return chord.heads().stream()
                .sorted(Comparator.comparing((Head head) -> head.pitch().diatonicIndex())
                        .thenComparing(head -> head.pitch().midi()))
                .toList();
    }

    /** Cells in the middle of a row and at its first note, and whether they have a note. */
    private record Piece(Cells plain, Cells fresh, boolean sounds) {
        static Piece same(Cells cells) {
            return new Piece(cells, cells, true);
        }

        Piece then(Piece next) {
            return new Piece(
                    plain.plus(next.plain), fresh.plus(sounds ? next.plain : next.fresh), sounds || next.sounds);
        }
    }

    private static List<CellGroup> units(Cells said, List<Piece> pieces, boolean beat) {
        var all = pieces.stream().reduce(Piece::then).orElseThrow();
        if (said.length() + all.fresh().length() < WIDEST) {
            return List.of(new CellGroup(Gap.JOINED, all.plain(), all.fresh(), true, beat).before(said));
        }
        var units = new ArrayList<>(saidFirst(said, beat));
        for (var piece : pieces) {
            if (!piece.fresh().isEmpty()) {
                units.add(new CellGroup(
                        Gap.JOINED, piece.plain(), piece.fresh(), piece.sounds(), beat && units.isEmpty()));
            }
        }
        return units;
    }

    /** Words that are parted from their note end with dot 3, whatever follows. */
    private static List<CellGroup> saidFirst(Cells said, boolean beat) {
        var units = new ArrayList<CellGroup>();
        var left = said.isEmpty() ? said : said.closed();
        int begin = 0;
        for (int i = 1; i <= left.length(); i++) {
            boolean ends =
                    i == left.length() || left.from(i).first(1).equals(BrailleSigns.WORD) && i - begin > WIDEST / 2;
            if (ends) {
                units.add(CellGroup.silent(Gap.JOINED, left.first(i).from(begin), beat && begin == 0));
                begin = i;
            }
        }
        return units;
    }

    /** Short words at notes: the hand that strikes, where it changes, and what has no sign of its own. */
    private Cells words(List<Head> heads) {
        var cells = new LinkedHashSet<Cells>();
        heads.stream().filter(head -> !head.tiedFrom()).map(Head::note).forEach(note -> {
            if (places) {
                note.pluck().flatMap(this::stroke).ifPresent(cells::add);
            }
            cells.addAll(ornaments(note));
        });
        heads.stream()
                .filter(head -> !head.tiedTo())
                .flatMap(head -> head.note().ornaments().slideOff().stream())
                .forEach(off -> cells.add(legend.use(BrailleWord.of(off))));
        spread(heads).filter(Spread.BRACKET::equals).ifPresent(together -> cells.add(legend.use(BrailleWord.BRACKET)));
        if (heads.get(0).note().isDead()) {
            cells.add(legend.use(BrailleWord.DEAD));
        }
        return cells.stream().reduce(Cells.NONE, Cells::plus);
    }

    private Optional<Cells> stroke(Technique now) {
        boolean changes = !stroke.equals(Optional.of(now));
        stroke = Optional.of(now);
        return changes ? BrailleWord.of(now).map(legend::use) : Optional.empty();
    }

    private List<Cells> ornaments(Note note) {
        var cells = new ArrayList<Cells>();
        var ornaments = note.ornaments();
        ornaments.slideIn().ifPresent(in -> cells.add(legend.use(BrailleWord.of(in))));
        if (note.has(Mark.VIBRATO)) {
            cells.add(legend.use(BrailleWord.VIBRATO));
        }
        if (note.has(Mark.RING)) {
            cells.add(legend.use(BrailleWord.RING));
        }
        ornaments.bend().ifPresent(bend -> cells.addAll(bend(bend)));
        ornaments
                .harmonic()
                .flatMap(harmonic -> harmonic.touchedFret().stream().boxed().findFirst())
                .ifPresent(fret -> cells.add(legend.use(BrailleWord.TOUCH, String.valueOf(fret))));
        return cells;
    }

    private List<Cells> bend(Bend bend) {
        var tones = Fraction.of(bend.quarters(), 4).toString();
        var up = legend.use(bend.before() ? BrailleWord.PRE_BEND : BrailleWord.BEND, tones);
        return bend.released() ? List.of(up, legend.use(BrailleWord.RELEASE)) : List.of(up);
    }

    private static Stream<Head> struck(List<Head> heads) {
        return heads.stream().filter(head -> !head.tiedFrom());
    }

    /** How notes are attacked that are struck together. One that is both short and held has one sign for both. */
    private static Cells attack(List<Head> heads) {
        Predicate<Mark> any = mark -> struck(heads).anyMatch(head -> head.note().has(mark));
        boolean both = any.test(Mark.SHORT) && any.test(Mark.TENUTO);
        var cells = both ? BrailleSigns.SHORT_AND_HELD : any.test(Mark.SHORT) ? BrailleSigns.SHORT : Cells.NONE;
        cells = any.test(Mark.ACCENT) ? cells.plus(BrailleSigns.ACCENT) : cells;
        cells = any.test(Mark.MARCATO) ? cells.plus(BrailleSigns.MARCATO) : cells;
        return any.test(Mark.TENUTO) && !both ? cells.plus(BrailleSigns.HELD) : cells;
    }

    /** Those that have a sign; a grace note comes after it, since its own note has no other stroke. */
    private static Cells strokes(List<Head> heads) {
        var strokes =
                struck(heads).flatMap(head -> head.note().pluck().stream()).toList();
        var down = strokes.contains(Technique.THUMB_DOWN) ? BrailleSigns.DOWN_STROKE : Cells.NONE;
        return strokes.contains(Technique.THUMB_UP) ? down.plus(BrailleSigns.UP_STROKE) : down;
    }

    private static Optional<Spread> spread(List<Head> heads) {
        return struck(heads)
                .flatMap(head -> head.note().ornaments().spread().stream())
                .findFirst();
    }

    private static Cells rolled(List<Head> heads) {
        return spread(heads)
                .map(spread -> switch (spread) {
                    case ROLL, ROLL_UP -> BrailleSigns.ROLL;
                    case ROLL_DOWN -> BrailleSigns.ROLL_DOWN;
                    case BRACKET -> Cells.NONE;
                })
                .orElse(Cells.NONE);
    }

    /** With the sign of the upper note where the key does not have it (rule: trill-sign). */
    private static Cells trill(Head head, Key key) {
        return head.note()
                .ornaments()
                .trill()
                .filter(trill -> !head.tiedFrom())
                .map(trill -> {
                    var letter = head.pitch().name().letter().plus(1);
                    var natural = head.pitch().midi() + trill.frets();
                    int octave = head.pitch().octave() + (letter.ordinal() == 0 ? 1 : 0);
                    int alteration = natural - Pitch.of(letter, octave).midi();
                    boolean inKey =
                            Math.abs(alteration) > NoteName.MOST_ALTERED || alteration == key.alterationOf(letter);
                    return inKey
                            ? BrailleSigns.TRILL
                            : BrailleSigns.accidental(Head.Sign.of(alteration)).plus(BrailleSigns.TRILL);
                })
                .orElse(Cells.NONE);
    }

    /** Where it is played, and the signs before what sounds. */
    private Piece place(Head head, Cells before) {
        if (!places || head.tiedFrom()) {
            return new Piece(before, before, false);
        }
        var plain = hand.before(head.note());
        var fresh = hand.afresh(head.note());
        hand.plays(head.note());
        return new Piece(plain.plus(before), fresh.plus(before), false);
    }

    private Optional<Piece> grace(Head head, VoiceSigns signs) {
        return head.grace().map(grace -> {
            var written = grace.pitch().octavesUp(1);
            var sign = BrailleSigns.GRACE.plus(accidental(grace.pitch(), grace.accidental(), signs));
            return pitched(
                    sign,
                    written,
                    BrailleSigns.note(written.name().letter(), GRACE).plus(gone(head.note())));
        });
    }

    /** The written note with all that belongs to it alone. */
    private Piece note(List<Head> heads, NoteValue value, Key key, VoiceSigns signs) {
        var head = heads.get(0);
        var open = around(head);
        var sign = attack(heads)
                .plus(trill(head, key))
                .plus(open)
                .plus(artificial(head))
                .plus(accidental(head, signs));
        var note = BrailleSigns.note(head.pitch().name().letter(), value)
                .plus(fingers(head))
                .plus(tie(head, heads))
                .plus(open);
        return pitched(sign, head.writtenPitch(), note);
    }

    private Piece pitched(Cells before, Pitch written, Cells note) {
        var octave = melody.needsMark(written) ? mark(written) : Cells.NONE;
        melody.goesTo(written);
        return new Piece(
                before.plus(octave).plus(note), before.plus(mark(written)).plus(note), true);
    }

    /** From a grace note to its own: a slur, and a line where it slides. */
    private static Cells gone(Note note) {
        boolean slides = note.arrival()
                .map(Arrival::kind)
                .filter(Arrival.Kind.SLIDE::equals)
                .isPresent();
        return slides ? BrailleSigns.SLUR.plus(BrailleSigns.SLIDE) : BrailleSigns.SLUR;
    }

    /** Counted from the written note; its octave is marked as rule: braille-intervals says. */
    private Cells interval(List<Head> heads, int index, Key key, VoiceSigns signs) {
        var head = heads.get(index);
        var dead = head.note().isDead() ? legend.use(BrailleWord.DEAD) : Cells.NONE;
        if (!dead.isEmpty()) {
            melody.interrupt();
        }
        var place = places && !head.tiedFrom() ? hand.beside(head.note()) : Cells.NONE;
        var open = around(head);
        return dead.apart(place.plus(trill(head, key))
                .plus(open)
                .plus(artificial(head))
                .plus(accidental(head, signs))
                .plus(isFar(heads, index) || !dead.isEmpty() ? mark(head.writtenPitch()) : Cells.NONE)
                .plus(BrailleSigns.interval(steps(heads.get(0), head)))
                .plus(fingers(head))
                .plus(tie(head, heads))
                .plus(open));
    }

    private static boolean isFar(List<Head> heads, int index) {
        int fromWritten = steps(heads.get(0), heads.get(index));
        int fromNeighbour = steps(heads.get(index - 1), heads.get(index));
        return index == 1 ? fromWritten > OCTAVE || fromWritten == 0 : fromNeighbour >= OCTAVE || fromNeighbour == 0;
    }

    private static int steps(Head from, Head to) {
        return to.pitch().diatonicIndex() - from.pitch().diatonicIndex();
    }

    /** Of a chord that is held as a whole, one tie stands behind it. */
    private static Cells tie(Head head, List<Head> heads) {
        return head.tiedTo() && !isHeldAsAWhole(heads) ? BrailleSigns.TIE : Cells.NONE;
    }

    private static boolean isHeldAsAWhole(List<Head> heads) {
        return heads.size() > 1 && heads.stream().allMatch(Head::tiedTo);
    }

    private static Cells accidental(Head head, VoiceSigns signs) {
        boolean none = head.tiedFrom() || head.note().isDead();
        return none ? printed(head.accidental()) : accidental(head.pitch(), head.accidental(), signs);
    }

    /** The printed one, or one that is not printed and that the voice lacks, which has dot 5 before it. */
    private static Cells accidental(Pitch pitch, Optional<Accidental> printed, VoiceSigns signs) {
        return signs.lacking(pitch, printed)
                .map(sign -> BrailleSigns.FILLING.plus(BrailleSigns.accidental(sign)))
                .orElseGet(() -> printed(printed));
    }

    /** A reminder stands in parentheses, as it is printed. */
    private static Cells printed(Optional<Accidental> accidental) {
        return accidental
                .map(each -> each.courtesy()
                        ? BrailleSigns.PARENTHESIS
                                .plus(BrailleSigns.accidental(each.sign()))
                                .plus(BrailleSigns.PARENTHESIS)
                        : BrailleSigns.accidental(each.sign()))
                .orElse(Cells.NONE);
    }

    private Cells around(Head head) {
        return head.note().has(Mark.GHOST) ? legend.use(BrailleSigns.PARENTHESIS, "braille.sign.ghost") : Cells.NONE;
    }

    private static Cells artificial(Head head) {
        boolean touched = head.note()
                .ornaments()
                .harmonic()
                .filter(each -> each.touchedFret().isPresent())
                .isPresent();
        return touched && !head.tiedFrom() ? BrailleSigns.ARTIFICIAL_HARMONIC : Cells.NONE;
    }

    private static Cells fingers(Head head) {
        if (head.tiedFrom()) {
            return Cells.NONE;
        }
        var ornaments = head.note().ornaments();
        var finger = ornaments.finger().isPresent()
                ? BrailleSigns.finger(ornaments.finger().getAsInt())
                : Cells.NONE;
        boolean natural = ornaments
                .harmonic()
                .filter(each -> each.touchedFret().isEmpty())
                .isPresent();
        return natural ? finger.plus(BrailleSigns.HARMONIC) : finger;
    }

    /** What follows all notes of a chord: a pause, what the fretting hand does next, ties. */
    private Cells behind(List<Head> heads) {
        var cells = heads.stream().anyMatch(head -> head.note().has(Mark.FERMATA) && !head.tiedTo())
                ? BrailleSigns.FERMATA
                : Cells.NONE;
        var join =
                heads.stream().map(joins::outOf).filter(each -> !each.isEmpty()).findFirst();
        return cells.plus(join.orElse(Cells.NONE)).plus(isHeldAsAWhole(heads) ? BrailleSigns.CHORD_TIE : Cells.NONE);
    }

    private Cells mark(Pitch written) {
        var mark = BrailleSigns.octave(written.octave());
        return BrailleSigns.hasOctave(written.octave()) ? mark : legend.use(mark, "braille.sign.octave");
    }
}
