package groundbass.sound.string;

import groundbass.performance.TimedNote;
import groundbass.score.Tuning;
import groundbass.signal.SampleRate;
import groundbass.sound.unit.Unit;
import groundbass.sound.unit.UnitSum;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** All strings of the bass, and the amplifier behind them. */
public final class StringBank {
    private StringBank() {}

    /** @param notes by moment */
    public static Unit of(SampleRate rate, Tuning tuning, List<TimedNote> notes) {
        Map<Integer, List<TimedNote>> strings =
                notes.stream().collect(Collectors.groupingBy(TimedNote::string, TreeMap::new, Collectors.toList()));
        var neck = new UnitSum(strings.entrySet().stream()
                .<Unit>map(string -> new BassString(
                        rate,
                        string.getKey(),
                        tuning.string(string.getKey()).pitch().midi(),
                        string.getValue()))
                .toList());
        return new Amplifier(rate, new SympatheticStrings(rate, tuning, notes, neck));
    }
}
