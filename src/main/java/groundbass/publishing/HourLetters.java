package groundbass.publishing;

import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.EpisodeState;
import groundbass.post.EmailAddress;
import groundbass.post.Mail;
import groundbass.post.Outbox;
import groundbass.text.Languages;
import groundbass.text.Messages;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Letters to an educator about the hours and corrections of their lessons, each written once, in the language of the site. */
public final class HourLetters {
    private final PublishingParts parts;
    private final Educators educators;
    private final Outbox outbox;

    public HourLetters(PublishingParts parts, Educators educators, Outbox outbox) {
        this.parts = parts;
        this.educators = educators;
        this.outbox = outbox;
    }

    /**
     * Notes that this trouble was told and puts the letter into the outbox, both or neither; nothing where it was, or where the
     * hour was taken back or moved since the lesson was read.
     */
    void tell(Handle handle, Episode episode, Trouble trouble) {
        // locked, since two nodes that see one trouble at once write one letter
        boolean stands = parts.episodes
                .lock(handle, episode.id())
                .filter(now -> now.isPublished() || now.state().equals(episode.state()))
                .isPresent();
        if (stands && !isTold(handle, episode.id(), trouble)) {
            note(handle, episode.id(), trouble);
            reader(episode).flatMap(reader -> EmailAddress.read(reader.email())).ifPresent(to -> {
                var letter = letter(episode, trouble, to);
                outbox.put(letter);
            });
        }
    }

    /** The hours of an episode that were told as missed. */
    List<Instant> missed(EpisodeId episode) {
        return parts.jdbi.withHandle(handle -> handle.createQuery(
                        "select about from hour_notice where episode_id = :episode and kind = :kind order by about")
                .bind("episode", episode)
                .bind("kind", Trouble.Kind.LATE.name())
                .mapTo(String.class)
                .map(Instant::parse)
                .list());
    }

    private Optional<Educator> reader(Episode episode) {
        return parts.catalog.find(episode.series()).flatMap(series -> educators.find(series.owner()));
    }

    private Mail letter(Episode episode, Trouble trouble, EmailAddress to) {
        var locale =
                Languages.spoken(Locale.forLanguageTag(parts.settings.current().language()));
        var words = Messages.of(locale);
        String title = Mail.subjectOf(episode.title());
        String subject = words.say(
                "publishing.letter.subject", title, words.say(trouble.kind().shortKey()));
        var paragraphs = new ArrayList<>(List.of(title, words.say(trouble.sentence())));
        hour(episode, locale, words).ifPresent(paragraphs::add);
        paragraphs.add(parts.addresses.desk(episode.id()) + trouble.kind().way());
        return Mail.of(to, subject, String.join("\n\n", paragraphs) + "\n", parts.clock.instant());
    }

    private static Optional<String> hour(Episode episode, Locale locale, Messages words) {
        if (!(episode.state() instanceof EpisodeState.Scheduled promise)) {
            return Optional.empty();
        }
        String moment = DateTimeFormatter.ofLocalizedDateTime(FormatStyle.MEDIUM, FormatStyle.SHORT)
                .withLocale(locale)
                .format(promise.at().atZone(promise.zone()));
        return Optional.of(
                words.say("publishing.letter.hour", moment, promise.zone().getId()));
    }

    private static boolean isTold(Handle handle, EpisodeId episode, Trouble trouble) {
        return handle.createQuery("""
                        select count(*) from hour_notice
                        where episode_id = :episode and kind = :kind and about = :about""")
                        .bind("episode", episode)
                        .bind("kind", trouble.kind().name())
                        .bind("about", trouble.about())
                        .mapTo(Integer.class)
                        .one()
                > 0;
    }

    private void note(Handle handle, EpisodeId episode, Trouble trouble) {
        handle.createUpdate("""
                        insert into hour_notice (episode_id, kind, about, told_at)
                        values (:episode, :kind, :about, :now)""")
                .bind("episode", episode)
                .bind("kind", trouble.kind().name())
                .bind("about", trouble.about())
                .bind("now", parts.clock.instant())
                .execute();
    }
}
