package groundbass.engraving.spacing;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.MusicFont;
import groundbass.score.Fraction;
import groundbass.score.Passage;
import groundbass.score.Position;
import groundbass.writing.Element;
import groundbass.writing.Element.Chord;
import groundbass.writing.Element.Rest;
import groundbass.writing.Head;
import groundbass.writing.Voice;
import groundbass.writing.WrittenBar;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** Sorts a bar's elements into columns and finds how wide each column is. */
public final class Columns {
    static final double GRACE_ROOM = 2.75;
    public static final double ANOTHER_GRACE = 3.1;
    private static final double GHOST_ROOM = 0.45;
    private static final double LEDGER_ROOM = 0.35;
    private static final double CURVE_ROOM = 0.7;
    private static final double GHOST_CURVE_ROOM = 2.4;
    private static final double SLIDE_END_ROOM = 1.3;
    /** For what stands before a chord that is rolled or struck at once. */
    static final double SPREAD_ROOM = 1.05;

    private static final double BEND_ROOM = 1.3;

    /** For the small head that a bend leads to, with a sign and its parentheses. */
    private static final double BENT_HEAD_ROOM = 3.1;

    /** For the small head before what is bent before it is struck; a sign of its own asks for more. */
    private static final double FRETTED_ROOM = 2;

    private static final double FRETTED_SIGN_ROOM = 0.85;

    /** What it goes back to. */
    private static final double RELEASE_ROOM = 2.5;

    private final WrittenBar bar;
    private final Set<Fraction> raised;
    private final Map<Fraction, List<Cell>> byOnset = new TreeMap<>();

    private Columns(WrittenBar bar, Set<Fraction> raised) {
        this.bar = bar;
        this.raised = raised;
        for (int voice = 0; voice < bar.voices().size(); voice++) {
            add(bar.voices().get(voice), voice);
        }
    }

    /**
     * In time; without rests that stand for the whole bar, which belong to no moment of it.
     *
     * @param raised the moments that are written an octave lower than usual
     */
    public static List<Column> of(WrittenBar bar, Set<Fraction> raised) {
        return new Columns(bar, raised).columns();
    }

    private void add(Voice voice, int number) {
        var up = Directions.of(bar, number, raised);
        var voices = Directions.voices(bar, number);
        var beamed = new boolean[up.length];
        voice.beams().forEach(beam -> java.util.Arrays.fill(beamed, beam.first(), beam.last() + 1, true));
        for (int i = 0; i < up.length; i++) {
            var element = voice.elements().get(i);
            if (!(element instanceof Rest rest) || !(rest.wholeBar() || rest.hidden())) {
                byOnset.computeIfAbsent(element.onset(), each -> new ArrayList<>())
                        .add(cell(element, number, voices[i], i, up[i], beamed[i]));
            }
        }
    }

    private Cell cell(Element element, int voice, int voices, int index, boolean up, boolean beamed) {
        var heads = element instanceof Chord chord ? Heads.place(chord, up, octave(chord)) : List.<HeadPlace>of();
        return new Cell(element, voice, voices, index, owner(bar, element), up, beamed, 0, heads, List.of());
    }

    private int octave(Chord chord) {
        return raised.contains(chord.onset()) ? Positions.OCTAVE : 0;
    }

    public static Passage owner(WrittenBar bar, Element element) {
        int number = bar.inForce().number();
        return new Passage(
                new Position(number, element.onset()),
                new Position(number, element.onset().plus(element.length())));
    }

    private List<Column> columns() {
        return byOnset.entrySet().stream()
                .map(each -> column(each.getKey(), each.getValue(), raised.contains(each.getKey())))
                .toList();
    }

    private static Column column(Fraction onset, List<Cell> unshifted, boolean raised) {
        var shifted = VoiceShift.apart(unshifted);
        double heads = shifted.stream().mapToDouble(Cell::headsRight).max().orElse(0);
        boolean ghost = shifted.stream().flatMap(cell -> cell.heads().stream()).anyMatch(h -> Heads.isGhost(h.head()));
        var cells = shifted.stream()
                .map(cell -> cell.withDots(Dots.place(cell, heads, ghost)))
                .toList();
        var accidentals = Accidentals.stack(cells);
        double left = accidentals.stream()
                .mapToDouble(each -> -each.box().left())
                .max()
                .orElse(0);
        double right = 0;
        for (var cell : cells) {
            left = Math.max(left, left(cell));
            right = Math.max(right, right(cell));
        }
        right += cells.stream()
                .flatMap(cell -> cell.heads().stream())
                .map(HeadPlace::head)
                .mapToDouble(Columns::bendRoom)
                .sum();
        double room = graceRoom(cells) + spreadRoom(cells) + frettedRoom(cells);
        return new Column(onset, cells, accidentals, left + room, right, raised);
    }

    private static double bendRoom(Head head) {
        var bend = head.note().ornaments().bend().filter(each -> !head.tiedFrom());
        if (bend.isEmpty()) {
            return 0;
        }
        double room = head.bentBefore().isPresent() ? 0 : head.bent().isPresent() ? BENT_HEAD_ROOM : BEND_ROOM;
        return bend.get().released() ? room + RELEASE_ROOM : room;
    }

    /** How far a column reaches to the left without its grace notes. */
    public static double leftOfMain(Column column) {
        return column.left() - graceRoom(column.cells());
    }

    private static double spreadRoom(List<Cell> cells) {
        return Heads.spread(cells).isPresent() ? SPREAD_ROOM : 0;
    }

    private static double frettedRoom(List<Cell> cells) {
        return cells.stream()
                .flatMap(cell -> cell.heads().stream())
                .map(HeadPlace::head)
                .filter(head -> !head.tiedFrom() && head.bentBefore().isPresent())
                .mapToDouble(head -> FRETTED_ROOM + (head.accidental().isPresent() ? FRETTED_SIGN_ROOM : 0))
                .max()
                .orElse(0);
    }

    /** Where small heads before a column end, left of its accidentals: counted from the column, positive. */
    public static double leftOfAccidentals(Column column) {
        return leftOfMain(column) - spreadRoom(column.cells()) - frettedRoom(column.cells());
    }

    private static double graceRoom(List<Cell> cells) {
        long graces = cells.stream().mapToLong(Columns::graces).sum();
        return graces == 0 ? 0 : GRACE_ROOM + (graces - 1) * ANOTHER_GRACE;
    }

    private static long graces(Cell cell) {
        return cell.heads().stream()
                .filter(head -> head.head().grace().isPresent())
                .count();
    }

    private static double left(Cell cell) {
        double left = -cell.headsLeft();
        for (var head : cell.heads()) {
            var note = head.head().note();
            double room = Math.max(ledgers(head) ? LEDGER_ROOM : 0, Heads.isGhost(head.head()) ? GHOST_ROOM : 0);
            if (note.ornaments().slideIn().isPresent() && !head.head().tiedFrom()) {
                room = Math.max(room, SLIDE_END_ROOM);
            }
            left = Math.max(left, room - cell.headsLeft());
        }
        return left;
    }

    private static double right(Cell cell) {
        double right = cell.isRest()
                ? MusicFont.bravura().width(Glyph.rest(cell.element().value().base()))
                : cell.headsRight();
        if (cell.flags() > 0) {
            right = Math.max(right, cell.stemDx() + MusicFont.bravura().width(Glyph.flag(cell.flags(), cell.up())));
        }
        for (var dot : cell.dots()) {
            right = Math.max(right, dot.dx() + MusicFont.bravura().width(Glyph.DOT));
        }
        double plain = right;
        for (var head : cell.heads()) {
            var note = head.head().note();
            double room = Math.max(ledgers(head) ? LEDGER_ROOM : 0, Heads.isGhost(head.head()) ? GHOST_ROOM : 0);
            room = Math.max(room, head.head().tiedTo() ? curveRoom(head.head()) : 0);
            room = Math.max(
                    room,
                    note.ornaments().slideOff().isPresent() && !head.head().tiedTo() ? SLIDE_END_ROOM : 0);
            right = Math.max(right, plain + room);
        }
        return right;
    }

    /** A tie between parentheses needs its length beside them. */
    private static double curveRoom(Head head) {
        return Heads.isGhost(head) ? GHOST_CURVE_ROOM : CURVE_ROOM;
    }

    private static boolean ledgers(HeadPlace head) {
        return Positions.ledgersAbove(head.position()) + Positions.ledgersBelow(head.position()) > 0;
    }
}
