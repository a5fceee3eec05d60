package groundbass.braille;

import groundbass.score.ChordAt;
import groundbass.score.Count;
import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Meter;
import groundbass.text.Messages;
import groundbass.theory.ChordSymbol;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.NoteName;
import groundbass.writing.Head;
import java.util.ArrayList;
import java.util.List;

/** The chords of a line, bar by bar, behind its music (rule: braille-chords-apart). */
final class ChordList {
    private static final Cells SHARP = BrailleSigns.accidental(Head.Sign.SHARP);
    private static final Cells FLAT = BrailleSigns.accidental(Head.Sign.FLAT);

    private final Messages messages;
    private final Literary literary;

    ChordList(Messages messages) {
        this.messages = messages;
        this.literary = Literary.of(messages.locale());
    }

    /** Nothing where no chord is written. */
    List<Cells> rows(Line line) {
        var words = new ArrayList<Cells>();
        var inForce = line.inForce();
        for (int i = 0; i < line.bars().size(); i++) {
            var chords = line.bars().get(i).chords();
            if (!chords.isEmpty()) {
                words.add(BrailleSigns.number(line.firstNumber() + i));
                for (var chord : chords) {
                    words.addAll(said(
                            chord, line.bars().get(i).from(), inForce.get(i).meter()));
                }
            }
        }
        if (words.isEmpty()) {
            return List.of();
        }
        var rows = new ArrayList<Cells>();
        rows.add(Cells.NONE);
        rows.add(Rows.centred(literary.cells(messages.say("braille.chords"))));
        rows.addAll(Rows.hanging(words));
        return rows;
    }

    /** Its count in parentheses where it does not begin with the bar. */
    private List<Cells> said(ChordAt chord, Fraction from, Meter meter) {
        var name = cells(chord.chord());
        if (chord.at().equals(from)) {
            return List.of(name);
        }
        String count = Count.at(chord.at(), meter)
                .map(Count::toString)
                .orElse(chord.at().toString());
        return List.of(literary.cells("(" + count + ")"), name);
    }

    /** Letters and figures in words' cells, accidentals in music's. */
    private Cells cells(ChordSymbol symbol) {
        if (!(symbol instanceof Chord chord)) {
            return literary.cells(symbol.toString());
        }
        var below =
                chord.bass().map(bass -> literary.cells("/").plus(cells(bass))).orElse(Cells.NONE);
        return cells(chord.root()).plus(suffix(chord.quality().suffix())).plus(below);
    }

    private Cells cells(NoteName name) {
        var sign = name.alteration() < 0 ? FLAT : SHARP;
        return literary.cells(name.letter().toString()).plus(sign.times(Math.abs(name.alteration())));
    }

    /** A flat or a sharp is one where it stands before a degree. */
    private Cells suffix(String suffix) {
        var cells = Cells.NONE;
        for (String part : suffix.split("(?=[b#]\\d)|(?<=[b#])(?=\\d)")) {
            cells = cells.plus(part.equals("b") ? FLAT : part.equals("#") ? SHARP : literary.cells(part));
        }
        return cells;
    }
}
