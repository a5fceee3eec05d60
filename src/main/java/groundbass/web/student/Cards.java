package groundbass.web.student;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.series.Series;
import groundbass.text.Message;
import groundbass.web.view.EpisodeCard;
import groundbass.web.view.Reader;
import java.util.List;

/** Lessons as lists show them. */
final class Cards {
    private final ReleaseContents contents;

    Cards(ReleaseContents contents) {
        this.contents = contents;
    }

    /** What a page of cards that is kept adds to its version. */
    String version() {
        return contents.version();
    }

    EpisodeCard of(Series series, PublishedSeries.Part part, Reader reader) {
        var words = contents.techniques(part.release().id());
        return of(series, part.episode(), TechniqueWords.of(words, reader), reader);
    }

    /** A neighbour, of which only the title is shown. */
    static EpisodeCard of(Series series, Episode episode, Reader reader) {
        return of(series, episode, List.of(), reader);
    }

    private static EpisodeCard of(Series series, Episode episode, List<String> techniques, Reader reader) {
        return new EpisodeCard(
                Paths.of(series, episode),
                episode.number(),
                episode.title(),
                series.title(),
                reader.say(Message.of(episode.level().messageKey())),
                techniques,
                episode.publishedAt().map(out -> out.atZone(series.zone())));
    }
}
