package groundbass.web.desk.site;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.publishing.LessonLook;
import groundbass.text.Message;
import groundbass.web.desk.calendar.PublishingViews;
import groundbass.web.view.Reader;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** Makes the rows of the desk's lists of lessons. */
final class LessonRows {
    private final PublishingViews publishing;

    LessonRows(PublishingViews publishing) {
        this.publishing = publishing;
    }

    /**
     * Makes rows for one page: which drafts are younger than what was fixed, and what holds for the whole site, is asked once
     * for all of them.
     */
    Function<Episode, LessonRow> of(EducatorId who, Reader reader) {
        var written = Set.copyOf(publishing.writtenSince(who));
        var site = publishing.look();
        return episode -> row(site.at(who, episode), written.contains(episode.id()), reader);
    }

    private LessonRow row(LessonLook look, boolean written, Reader reader) {
        var episode = look.episode();
        var standing = publishing.standing(look, reader);
        var troubles = episode.isPublished() ? List.<Message>of() : publishing.troubles(look);
        var differs = written ? look.differs() : Optional.<Message>empty();
        return new LessonRow(
                episode.id().value(),
                "/desk/episodes/" + episode.id(),
                episode.number(),
                episode.title(),
                standing,
                troubles,
                differs);
    }
}
