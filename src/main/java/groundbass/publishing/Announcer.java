package groundbass.publishing;

import groundbass.audience.news.NewsReaders;
import groundbass.audience.news.QueuedLetter;
import groundbass.audience.student.LetterHead;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.series.Series;
import groundbass.catalog.settings.Imprint;
import groundbass.document.EpisodeDocument;
import groundbass.lesson.VideoText;
import groundbass.post.EmailAddress;
import groundbass.post.Mail;
import groundbass.release.Release;
import groundbass.release.ReleaseId;
import groundbass.text.Messages;
import java.net.URI;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Puts into words that a lesson is out: in the reader's language, with what the educator says of the series. */
public final class Announcer {
    private final PublishingParts parts;
    private final NewsTexts texts;
    private final NewsReaders readers;
    private final Supplier<LetterHead> head;

    /** @param head who writes, asked anew for each letter */
    public Announcer(PublishingParts parts, NewsTexts texts, NewsReaders readers, Supplier<LetterHead> head) {
        this.parts = parts;
        this.texts = texts;
        this.readers = readers;
        this.head = head;
    }

    /** As it stands in the letters, without what makes it one. */
    public Announcement of(Series series, Episode lesson, Locale locale) {
        return of(series, lesson, locale, texts.of(series.id()));
    }

    /** With a text that is not saved. */
    public Announcement of(Series series, Episode lesson, Locale locale, NewsText text) {
        var words = Messages.of(locale);
        String level = words.say(lesson.level().messageKey());
        return new Announcement(
                locale,
                Mail.subjectOf(own(text.subject(), series, lesson, words, "news.lesson.subject")),
                own(text.opening(), series, lesson, words, "news.lesson.opening"),
                words.say("news.heading", Integer.toString(lesson.number()), lesson.title()),
                words.say("news.facts", series.title(), level),
                lesson.summary().strip(),
                parts.addresses.episode(lesson.id()),
                Optional.empty());
    }

    /** What stands below the lesson's video elsewhere, in the language of what students get. */
    public String belowVideo(Episode lesson, EpisodeDocument said) {
        var words = Messages.of(Locale.forLanguageTag(said.settings().language()));
        return VideoText.of(said, parts.addresses.episode(lesson.id()), words);
    }

    private static String own(String text, Series series, Episode lesson, Messages words, String usual) {
        return text.isBlank()
                ? words.say(usual, series.title(), lesson.title())
                : text.replace("[title]", lesson.title())
                        .replace("[series]", series.title())
                        .replace("[number]", Integer.toString(lesson.number()));
    }

    /** What is told of a correction to those who have an earlier release. */
    private Announcement of(Series series, Episode lesson, Release correction, Locale locale) {
        var words = Messages.of(locale);
        var usual = of(series, lesson, locale, NewsText.USUAL);
        String said = words.say(
                "news.correction.opening",
                lesson.title(),
                correction.spec().release(),
                correction.note().text());
        return new Announcement(
                locale,
                Mail.subjectOf(words.say("news.correction.subject", lesson.title(), series.title())),
                said,
                usual.heading(),
                usual.facts(),
                "",
                usual.link(),
                Optional.empty());
    }

    /** The letter to somebody who gets the news of a series. */
    Mail letter(Series series, Episode lesson, QueuedLetter to) {
        String end = head.get().link("news/end/" + readers.key(to.reader()));
        var told =
                switch (to.kind()) {
                    case LESSON -> of(series, lesson, to.locale());
                    case CORRECTION -> of(series, lesson, correction(to), to.locale());
                };
        var news = told.with(foot(series, to.locale(), to.agreedAt(), end));
        return mail(news, to.email()).withUnsubscribe(URI.create(end));
    }

    private Release correction(QueuedLetter to) {
        return ReleaseId.parse(to.about()).flatMap(parts.releases::find).orElseThrow();
    }

    /** The same letter to its educator alone, who gets it to look at: its foot ends nothing. */
    public Mail trial(Series series, Announcement news, EmailAddress to) {
        String asking = head.get().link("series/" + series.slug().value() + "/news");
        return mail(news.with(foot(series, news.locale(), parts.clock.instant(), asking)), to);
    }

    private Mail mail(Announcement news, EmailAddress to) {
        return Mail.of(to, news.subject(), news.plain(), parts.clock.instant()).withHtml(news.html());
    }

    private Announcement.Foot foot(Series series, Locale locale, Instant agreedAt, String end) {
        var words = Messages.of(locale);
        String day = DateTimeFormatter.ofLocalizedDate(FormatStyle.LONG)
                .withLocale(locale)
                .format(agreedAt.atZone(series.zone()));
        var writer = head.get();
        return new Announcement.Foot(
                words.say("news.reason", day, series.title(), writer.site(), writer.host(), writer.teacher()),
                words.say("news.end"),
                end,
                sender(parts.settings.current().imprint(), writer));
    }

    /** Many countries ask for the sender's name and address in such letters. */
    private static String sender(Imprint imprint, LetterHead writer) {
        return Stream.of(imprint.name(), imprint.email(), imprint.legal(), writer.link("who-teaches"))
                .filter(line -> !line.isBlank())
                .collect(Collectors.joining("\n"));
    }
}
