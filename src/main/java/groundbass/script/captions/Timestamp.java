package groundbass.script.captions;

import java.util.Optional;
import java.util.regex.Pattern;

/** Times of captions in milliseconds: {@code 01:02:03.004}, {@code 02:03.004}; SubRip has a comma before the milliseconds. */
public final class Timestamp {
    /** WebVTT, section "WebVTT timestamp": hours of two digits or more, minutes and seconds below 60, three digits. */
    private static final Pattern FORM = Pattern.compile("(?:(\\d{2,5}):)?([0-5]\\d):([0-5]\\d)[.,](\\d{3})");

    private Timestamp() {}

    public static Optional<Long> parse(String text) {
        var matcher = FORM.matcher(text);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        long hours = matcher.group(1) == null ? 0 : Long.parseLong(matcher.group(1));
        long seconds = (hours * 60 + Long.parseLong(matcher.group(2))) * 60 + Long.parseLong(matcher.group(3));
        return Optional.of(seconds * 1000 + Long.parseLong(matcher.group(4)));
    }

    /** As WebVTT writes it, with hours. */
    public static String print(long millis) {
        long seconds = millis / 1000;
        return two(seconds / 3600) + ":" + two(seconds / 60 % 60) + ":" + two(seconds % 60) + "."
                + three(millis % 1000);
    }

    /** As people write it: {@code 4:05}, {@code 1:02:03}. */
    public static String brief(long millis) {
        long seconds = millis / 1000;
        return seconds < 3600
                ? seconds / 60 + ":" + two(seconds % 60)
                : seconds / 3600 + ":" + two(seconds / 60 % 60) + ":" + two(seconds % 60);
    }

    private static String two(long number) {
        return number < 10 ? "0" + number : String.valueOf(number);
    }

    private static String three(long number) {
        return (number < 100 ? "0" : "") + two(number);
    }
}
