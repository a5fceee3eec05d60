package groundbass.sound;

import groundbass.performance.Performance;
import groundbass.performance.TimedNote;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** All strings of the bass, and the amplifier behind them. */
final class Neck {
    private Neck() {}

    static Unit of(SampleRate rate, Performance performance) {
        var tuning = performance.line().header().tuning();
        Map<Integer, List<TimedNote>> strings = performance.notes().stream()
                .collect(Collectors.groupingBy(TimedNote::string, TreeMap::new, Collectors.toList()));
        var neck = new Together(strings.entrySet().stream()
                .<Unit>map(string -> new BassString(
                        rate,
                        string.getKey(),
                        tuning.string(string.getKey()).pitch().midi(),
                        string.getValue()))
                .toList());
        return new Amplifier(rate, neck);
    }
}
