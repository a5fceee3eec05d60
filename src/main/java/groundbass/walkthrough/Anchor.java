package groundbass.walkthrough;

import groundbass.identity.Sha256;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Where words about a step are tied: to what it tells, not to the number of its bar. Steps that tell the same are told
 * apart by their neighbours.
 *
 * @param own    a digest of what the step tells: its notes, where they fall in their beats, how they are played
 * @param before the same of the step before it; empty at the beginning
 * @param after  the same of the step after it; empty at the end
 */
public record Anchor(String own, String before, String after) {
    /** Sixteen digits tell the steps of a line apart: 64 bits, and no one gains by a collision. */
    private static final int DIGITS = 16;

    private static final Pattern FORM = Pattern.compile("([0-9a-f]{16})\\.([0-9a-f]{16})?\\.([0-9a-f]{16})?");

    public Anchor {
        Objects.requireNonNull(own);
        Objects.requireNonNull(before);
        Objects.requireNonNull(after);
    }

    /** Reads what {@link #toString} wrote. */
    public static Optional<Anchor> parse(String text) {
        var matcher = FORM.matcher(text);
        return matcher.matches()
                ? Optional.of(new Anchor(matcher.group(1), given(matcher.group(2)), given(matcher.group(3))))
                : Optional.empty();
    }

    private static String given(String group) {
        return Optional.ofNullable(group).orElse("");
    }

    /** How many neighbours are the same, of two anchors with the same digest of their own. */
    int likeness(Anchor other) {
        return (before.equals(other.before) ? 1 : 0) + (after.equals(other.after) ? 1 : 0);
    }

    static String digest(String subject) {
        return Sha256.of(subject.getBytes(StandardCharsets.UTF_8)).hex().substring(0, DIGITS);
    }

    /** {@code own.before.after} */
    @Override
    public String toString() {
        return own + "." + before + "." + after;
    }
}
