package groundbass.web.view;

import groundbass.text.Message;
import groundbass.text.Messages;
import java.text.NumberFormat;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.List;
import java.util.Locale;
import java.util.Objects;

/**
 * The person an answer is written for: language, zone, and how dates and numbers are written where they live. Pages are written in the site's zone; a script of ours
 * rewrites the times of a {@code <time>} element in the reader's own, so that pages can be kept and shared.
 */
public record Reader(Locale locale, ZoneId zone, Locale writing) {
    private static final int KILO = 1000;
    private static final String[] SIZES = {"size.bytes", "size.kilobytes", "size.megabytes", "size.gigabytes"};

    public Reader {
        Objects.requireNonNull(locale);
        Objects.requireNonNull(zone);
        Objects.requireNonNull(writing);
    }

    /** Somebody who writes dates and numbers as most of the language do. */
    public Reader(Locale locale, ZoneId zone) {
        this(locale, zone, locale);
    }

    /** The language tag for a {@code lang} attribute. */
    public String language() {
        return locale.toLanguageTag();
    }

    /** What can be chosen from. */
    public List<LanguageRow> languages() {
        return LanguageRow.with(language());
    }

    /** The same person, told times of another zone. */
    public Reader in(ZoneId other) {
        return new Reader(locale, other, writing);
    }

    public String date(Instant instant) {
        return day(instant.atZone(zone));
    }

    /** The date in a zone of its own, where that is the zone that was promised in. */
    public String day(ZonedDateTime time) {
        return DateTimeFormatter.ofLocalizedDate(FormatStyle.LONG)
                .withLocale(writing)
                .format(time);
    }

    /** Date, time and zone, such as {@code 4 May 2026, 18:00 CEST} as the language writes it. */
    public String moment(Instant instant) {
        var style = DateTimeFormatter.ofLocalizedDateTime(FormatStyle.LONG, FormatStyle.SHORT);
        var zoned = instant.atZone(zone);
        return style.withLocale(writing).format(zoned)
                + " "
                + DateTimeFormatter.ofPattern("zzz", writing).format(zoned);
    }

    public String number(long number) {
        return NumberFormat.getIntegerInstance(writing).format(number);
    }

    /** A part of a whole, 0 to 1, as whole percent. */
    public String percent(double part) {
        return NumberFormat.getPercentInstance(writing).format(part);
    }

    /** A file's size in decimal units (1 kB = 1000 bytes, IEC 80000-13), with at most one decimal. */
    public String size(long bytes) {
        double amount = bytes;
        int unit = 0;
        while (amount >= KILO && unit < SIZES.length - 1) {
            amount /= KILO;
            unit++;
        }
        var format = NumberFormat.getNumberInstance(writing);
        format.setMaximumFractionDigits(amount < 10 ? 1 : 0);
        return say(Message.of(SIZES[unit], format.format(amount)));
    }

    public String say(Message message) {
        return Messages.of(locale).say(message);
    }
}
