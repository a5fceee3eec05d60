package groundbass.web.student.lesson;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.series.Series;
import groundbass.lesson.PageContent;
import groundbass.release.Feature;
import groundbass.text.Message;
import groundbass.web.view.EpisodeCard;
import groundbass.web.view.Reader;
import groundbass.web.view.TechniqueWords;
import java.util.List;
import java.util.Optional;

/** Lessons as lists show them. */
public final class Cards {
    private final ReleaseContents contents;

    public Cards(ReleaseContents contents) {
        this.contents = contents;
    }

    /** What a page of cards that is kept adds to its version. */
    String version() {
        return contents.version();
    }

    EpisodeCard of(Series series, PublishedSeries.Part part, Reader reader) {
        var page = contents.listed(part.release().id());
        var words = page.map(PageContent::techniques).orElse(List.of());
        var picture = Optional.of(part.release())
                .filter(release -> release.isReady() && release.spec().has(Feature.CARD_PICTURES))
                .map(release -> CardPictures.of(release.id()));
        String language = page.map(PageContent::language).orElse("");
        return of(series, part.episode(), language, TechniqueWords.of(words, reader), picture, reader);
    }

    /** The language of a series is that of its newest lesson. */
    String language(PublishedSeries series) {
        return contents.language(series.newest(1).get(0).release().id());
    }

    /** A neighbour, of which only the title is shown. */
    static EpisodeCard of(Series series, Episode episode, Reader reader) {
        return of(series, episode, "", List.of(), Optional.empty(), reader);
    }

    private static EpisodeCard of(
            Series series,
            Episode episode,
            String language,
            List<String> techniques,
            Optional<EpisodeCard.Picture> picture,
            Reader reader) {
        return new EpisodeCard(
                Paths.of(series, episode),
                episode.number(),
                episode.title(),
                series.title(),
                language,
                reader.say(Message.of(episode.level().messageKey())),
                techniques,
                episode.publishedAt().map(out -> out.atZone(series.zone())),
                picture);
    }
}
