package groundbass.web.student.feed;

import groundbass.catalog.series.Outlook;
import groundbass.catalog.settings.SiteSettings;
import groundbass.release.FileRole;
import groundbass.release.PracticeTrack;
import groundbass.release.Release;
import groundbass.release.ReleaseFile;
import groundbass.release.Releases;
import groundbass.text.Messages;
import groundbass.web.student.lesson.Coming;
import groundbass.web.student.lesson.PublishedSeries;
import java.net.URI;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/** Gathers what feeds, calendar and map say. */
final class Feeds {
    private static final int NEWEST = 50;

    private final Releases releases;
    private final Function<String, URI> address;

    /** @param address the full address of a path of ours */
    Feeds(Releases releases, Function<String, URI> address) {
        this.releases = releases;
        this.address = address;
    }

    Feed of(PublishedSeries published, SiteSettings chosen) {
        var series = published.series();
        var entries = published.newest(NEWEST).stream()
                .map(part -> entry(part, chosen.downloadsNeedSignIn()))
                .toList();
        var updated = entries.stream().map(Feed.Entry::updated).max(Comparator.naturalOrder());
        return new Feed(
                PermanentId.of(series.id()),
                series.title(),
                series.summary(),
                chosen.imprint().name().isBlank()
                        ? chosen.siteName()
                        : chosen.imprint().name(),
                chosen.language(),
                full(path(published)),
                updated.orElse(series.createdAt()),
                entries);
    }

    private Feed.Entry entry(PublishedSeries.Part part, boolean signIn) {
        var lesson = part.episode();
        var published = lesson.publishedAt().orElseThrow();
        return new Feed.Entry(
                PermanentId.of(lesson.id()),
                lesson.number() + ". " + lesson.title(),
                lesson.summary(),
                full("/e/" + lesson.id()),
                published,
                part.release().publishedAt().orElse(published),
                signIn ? List.of() : files(part.release()));
    }

    /** The sheet, the band at the full tempo, and all in one. */
    private List<Feed.Enclosure> files(Release release) {
        return releases.files().of(release.id()).stream()
                .filter(Feeds::goesWithIt)
                .map(file -> new Feed.Enclosure(
                        full("/files/" + release.id() + "/" + file.name()),
                        file.mediaType(),
                        file.size(),
                        file.name(),
                        file.role() == FileRole.PRACTICE))
                .toList();
    }

    private static boolean goesWithIt(ReleaseFile file) {
        return switch (file.role()) {
            case SHEET, BUNDLE, ZIP -> true;
            case PRACTICE -> PracticeTrack.of(file).filter(Feeds::isWholeBand).isPresent();
            case MIDI,
                    MUSICXML,
                    PLAIN_TAB,
                    BRAILLE,
                    BRAILLE_TEXT,
                    LINE_TEXT,
                    LOSSLESS,
                    ON_REQUEST,
                    OWN_TRACK,
                    READ_ME,
                    PICTURE,
                    NOTE_PICTURE,
                    PAGE,
                    PLAY,
                    STEM -> false;
        };
    }

    private static boolean isWholeBand(PracticeTrack track) {
        return track.sounding() == PracticeTrack.Sounding.FULL && track.percent() == PracticeTrack.WHOLE;
    }

    /** What is out with its hour, and of what comes as much as the educator lets be known. */
    List<CalendarFile.Event> events(PublishedSeries published, Locale locale) {
        var past = published.newest(NEWEST).stream().map(this::past);
        var coming = published.coming().stream().map(one -> coming(one, published.outlook(), locale));
        return Stream.concat(past, coming)
                .sorted(Comparator.comparing(CalendarFile.Event::at))
                .toList();
    }

    private CalendarFile.Event past(PublishedSeries.Part part) {
        var lesson = part.episode();
        Instant out = lesson.publishedAt().orElseThrow();
        return new CalendarFile.Event(
                PermanentId.of(lesson.id()), out, out, lesson.title(), Optional.of(full("/e/" + lesson.id())));
    }

    private static CalendarFile.Event coming(Coming lesson, Outlook outlook, Locale locale) {
        String title =
                outlook == Outlook.TITLES ? lesson.title() : Messages.of(locale).say("student.coming.lesson");
        return new CalendarFile.Event(
                PermanentId.of(lesson.id()), lesson.at(), lesson.madeAt(), title, Optional.empty());
    }

    List<Sitemap.Page> pages(List<PublishedSeries> all) {
        var always = Stream.of("/", "/who-teaches", "/cautions", "/privacy")
                .map(path -> new Sitemap.Page(full(path), Optional.empty()));
        return Stream.concat(always, all.stream().flatMap(this::pages)).toList();
    }

    private Stream<Sitemap.Page> pages(PublishedSeries published) {
        var series = new Sitemap.Page(full(path(published)), Optional.empty());
        var lessons = published.parts().stream()
                .map(part -> new Sitemap.Page(
                        full(path(published) + "/" + part.episode().number()),
                        part.release().publishedAt()));
        return Stream.concat(Stream.of(series), lessons);
    }

    private static String path(PublishedSeries published) {
        return "/series/" + published.series().slug().value();
    }

    private String full(String path) {
        return address.apply(path).toString();
    }
}
