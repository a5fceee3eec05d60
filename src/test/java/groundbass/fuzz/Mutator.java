package groundbass.fuzz;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/** Makes spoiled inputs of good ones: the same seed makes the same. */
final class Mutator {
    private static final int MOST_CHANGES = 8;
    private static final int LONGEST = 1 << 16;
    private static final List<String> FIGURES = List.of(
            "0",
            "1",
            "-1",
            "37",
            "99",
            "255",
            "256",
            "65536",
            "2147483647",
            "2147483648",
            "-2147483648",
            "9223372036854775808",
            "1e9",
            "0.5",
            "1/0",
            "007",
            "",
            " ",
            "\u0000",
            "\n",
            "\u2028",
            "\uFEFF",
            "é",
            "\uD83C\uDFB8");

    private final Random random;
    private final List<byte[]> examples;
    private final List<byte[]> words;

    Mutator(Target target, Random random) {
        this.random = random;
        this.examples = target.examples();
        this.words = target.words().stream()
                .map(word -> word.getBytes(StandardCharsets.UTF_8))
                .toList();
    }

    byte[] next() {
        byte[] input = one(examples);
        for (int change = random.nextInt(MOST_CHANGES); change >= 0; change--) {
            input = changed(input);
        }
        return input.length > LONGEST ? Arrays.copyOf(input, LONGEST) : input;
    }

    private byte[] changed(byte[] in) {
        int from = random.nextInt(in.length + 1);
        int length = Math.min(in.length - from, 1 + random.nextInt(random.nextInt(8) == 0 ? 200 : 12));
        byte[] span = Arrays.copyOfRange(in, from, from + length);
        return switch (random.nextInt(8)) {
            case 0 -> replaced(in, from, length, new byte[0]);
            case 1 -> replaced(in, from, 0, span);
            case 2 -> replaced(in, random.nextInt(in.length + 1), 0, span);
            case 3 -> replaced(in, from, 0, words.isEmpty() ? figure() : one(words));
            case 4 -> replaced(in, from, length, words.isEmpty() ? figure() : one(words));
            case 5 -> figured(in);
            case 6 -> flipped(in);
            default -> crossed(in, from);
        };
    }

    private byte[] crossed(byte[] in, int from) {
        byte[] other = one(examples);
        int at = random.nextInt(other.length + 1);
        return replaced(in, from, in.length - from, Arrays.copyOfRange(other, at, other.length));
    }

    /** A figure becomes another: counts, frets and lengths are where most goes wrong. */
    private byte[] figured(byte[] in) {
        int start = random.nextInt(in.length + 1);
        for (int at = start; at < in.length; at++) {
            if (Character.isDigit(in[at])) {
                return replaced(in, at, 1, figure());
            }
        }
        return replaced(in, start, 0, figure());
    }

    private byte[] flipped(byte[] in) {
        byte[] out = in.clone();
        if (out.length > 0) {
            int at = random.nextInt(out.length);
            out[at] = random.nextBoolean() ? (byte) (out[at] ^ 1 << random.nextInt(8)) : (byte) random.nextInt(256);
        }
        return out;
    }

    private byte[] figure() {
        String figure = random.nextInt(3) == 0
                ? String.valueOf(random.nextInt(200))
                : FIGURES.get(random.nextInt(FIGURES.size()));
        return figure.getBytes(StandardCharsets.UTF_8);
    }

    private <T> T one(List<T> all) {
        return all.get(random.nextInt(all.size()));
    }

    private static byte[] replaced(byte[] in, int from, int length, byte[] by) {
        var out = new ByteArrayOutputStream(in.length + by.length);
        out.write(in, 0, from);
        out.writeBytes(by);
        out.write(in, from + length, in.length - from - length);
        return out.toByteArray();
    }
}
