package groundbass.publishing;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Draft;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesId;
import groundbass.catalog.settings.Imprint;
import groundbass.publishing.address.Addresses;
import groundbass.publishing.preflight.MailOutlook;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/**
 * What holds for every lesson of the site at the moment at which it is first asked for: each thing is asked once, however
 * many lessons are looked at. One is made for each page and for each step of a pass.
 */
public final class SiteLook {
    private final PublishingParts parts;
    private final Once<Imprint> imprint;
    private final Once<Addresses> addresses;
    private final Once<Integer> undelivered;
    private final Map<SeriesId, MailOutlook> mail = new ConcurrentHashMap<>();

    private final Map<SeriesId, ZoneId> zones = new ConcurrentHashMap<>();

    SiteLook(PublishingParts parts) {
        this.parts = parts;
        this.imprint = new Once<>(() -> parts.settings.current().imprint());
        this.addresses = new Once<>(parts.addresses::now);
        this.undelivered = new Once<>(parts.mail::undelivered);
    }

    /** A look at a lesson of theirs. */
    public LessonLook at(EducatorId who, Episode episode) {
        return new LessonLook(parts, this, episode, () -> parts.desk.draft(who, episode.id()));
    }

    /** A look at a lesson of which the draft is in hand. */
    public LessonLook at(Episode episode, Draft draft) {
        return new LessonLook(parts, this, episode, () -> Optional.of(draft));
    }

    /** A look at a lesson, whoever writes it. */
    LessonLook at(Episode episode) {
        return new LessonLook(parts, this, episode, () -> parts.catalog
                .find(episode.series())
                .flatMap(series -> parts.desk.draft(series.owner(), episode.id())));
    }

    Imprint imprint() {
        return imprint.get();
    }

    Addresses addresses() {
        return addresses.get();
    }

    ZoneId zone(SeriesId series) {
        return zones.computeIfAbsent(
                series, one -> parts.catalog.find(one).map(Series::zone).orElse(ZoneOffset.UTC));
    }

    MailOutlook mail(SeriesId series) {
        return mail.computeIfAbsent(series, one -> parts.mail.outlook(one, undelivered.get()));
    }
}
