package groundbass.fuzz;

import static java.nio.charset.StandardCharsets.UTF_8;

import groundbass.linetext.edit.Edit;
import groundbass.linetext.edit.LineEdit;
import groundbass.score.Count;
import groundbass.score.Fraction;
import java.util.List;
import java.util.Random;

/** Any change of any text. */
final class EditTarget implements Target {
    private final LineTarget lines = new LineTarget();

    @Override
    public List<byte[]> examples() {
        return lines.examples();
    }

    @Override
    public List<String> words() {
        return lines.words();
    }

    @Override
    public void take(byte[] input, Random random) {
        String text = new String(input, UTF_8);
        for (int i = 0; i < 4; i++) {
            LineEdit.apply(text, edit(random));
        }
    }

    private Edit edit(Random random) {
        int bar = random.nextInt(12) - 1;
        var at = Count.parse(1 + random.nextInt(6) + List.of("", "&", "e", "a").get(random.nextInt(4)))
                .orElseThrow();
        String word = words().get(random.nextInt(words().size()));
        var length = Fraction.of(1 + random.nextInt(9), 1L << random.nextInt(12));
        return switch (random.nextInt(8)) {
            case 0 -> new Edit.Events(bar, at, word);
            case 1 -> new Edit.AddCount(bar, at);
            case 2 -> new Edit.RemoveCount(bar, at);
            case 3 -> new Edit.AddBar(bar);
            case 4 -> new Edit.DeleteBar(bar);
            case 5 -> new Edit.Chords(bar, word);
            case 6 ->
                new Edit.Setting(
                        List.of("tempo", "meter", "key", "strings", word).get(random.nextInt(5)), word);
            default -> new Edit.Step(bar, at, length, word);
        };
    }
}
