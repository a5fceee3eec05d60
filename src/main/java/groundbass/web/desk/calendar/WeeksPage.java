package groundbass.web.desk.calendar;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.EpisodeState;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.Rhythms;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.form.Outcome;
import groundbass.publishing.Publisher;
import groundbass.publishing.Slot;
import groundbass.text.Message;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.FieldProblems;
import groundbass.web.view.Reader;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** The coming hours of every series: which lesson goes out when, which hours are free, and what waits for one. */
public final class WeeksPage implements PageGroup {
    private static final String PATH = "/desk/weeks";
    private static final int HOURS = 8;

    /** Each is proofread and looked over for what is missing. */
    private static final int MOST_LOOKED_OVER = 12;

    private final DeskContext desk;
    private final SeriesCatalog catalog;
    private final Episodes episodes;
    private final Rhythms rhythms;
    private final Publisher publisher;
    private final PublishingViews publishing;
    private final Clock clock;

    public WeeksPage(
            DeskContext desk,
            SeriesCatalog catalog,
            Episodes episodes,
            Rhythms rhythms,
            Publisher publisher,
            PublishingViews publishing,
            Clock clock) {
        this.desk = desk;
        this.catalog = catalog;
        this.episodes = episodes;
        this.rhythms = rhythms;
        this.publisher = publisher;
        this.publishing = publishing;
        this.clock = clock;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EDUCATOR, ctx -> show(ctx, Optional.empty()));
        routes.post(PATH + "/promise", Role.EDUCATOR, this::promise);
        routes.post(PATH + "/withdraw", Role.EDUCATOR, this::withdraw);
    }

    private void promise(Context ctx) {
        var who = desk.educator(ctx);
        var episode = episode(ctx, who);
        var zone = desk.seriesOf(episode).zone();
        var outcome = local(FormParameters.text(ctx, "local"))
                .<Outcome<?>>map(local -> publisher.schedule(who, episode.id(), local, zone))
                .orElseGet(() -> Outcome.refused("local", "desk.publish.hour.missing"));
        answer(ctx, episode, outcome, "desk.promised");
    }

    private void withdraw(Context ctx) {
        var who = desk.educator(ctx);
        var episode = episode(ctx, who);
        answer(ctx, episode, publisher.withdraw(who, episode.id()), "desk.withdrawn");
    }

    private void answer(Context ctx, Episode episode, Outcome<?> outcome, String said) {
        if (outcome.problems().isEmpty()) {
            Flash.say(ctx, said);
            ctx.redirect(PATH + "#series-" + episode.series(), HttpStatus.SEE_OTHER);
        } else {
            var problems = new FieldProblems(outcome.problems());
            String local = FormParameters.text(ctx, "local");
            show(ctx, Optional.of(new Held(episode.id().value(), local, path(episode), episode.title(), problems)));
        }
    }

    private Episode episode(Context ctx, EducatorId who) {
        return EpisodeId.parse(FormParameters.text(ctx, "episode"))
                .flatMap(id -> episodes.ownedBy(who, id))
                .orElseThrow(NotFoundResponse::new);
    }

    private static Optional<LocalDateTime> local(String text) {
        try {
            return Optional.of(LocalDateTime.parse(text));
        } catch (DateTimeException noHour) {
            return Optional.empty();
        }
    }

    private void show(Context ctx, Optional<Held> held) {
        var who = desk.educator(ctx);
        var reader = desk.pages().reader(ctx);
        var blocks = catalog.ownedBy(who).stream()
                .map(series -> block(who, series, held, reader))
                .toList();
        var view = new View(blocks, held);
        if (held.isPresent()) {
            desk.pages().showAgain(ctx, "desk/weeks", view);
        } else {
            desk.pages().show(ctx, "desk/weeks", view);
        }
    }

    private Block block(EducatorId who, Series series, Optional<Held> held, Reader reader) {
        var unpublished = episodes.inHand(series.id(), 0);
        var promised = unpublished.stream().filter(WeeksPage::isPromised).toList();
        var slots = rhythms.of(series.id())
                .map(rhythm -> Slot.coming(rhythm, series.zone(), promised, clock.instant(), HOURS))
                .orElse(List.of());
        var undated =
                unpublished.stream().filter(episode -> !isPromised(episode)).toList();
        var proposed = undated.stream().map(episode -> episode.id().value()).iterator();
        var rows = slots.stream()
                .map(slot -> {
                    String next = slot.isFree() && proposed.hasNext() ? proposed.next() : "";
                    return row(
                            slot, held.flatMap(lesson -> lesson.chosenFor(slot)).orElse(next), reader);
                })
                .toList();
        var others = Slot.beside(slots, promised).stream()
                .map(episode -> entry(episode, reader))
                .toList();
        var waiting = IntStream.range(0, undated.size())
                .mapToObj(i -> waiting(who, undated.get(i), i < MOST_LOOKED_OVER))
                .toList();
        var choices = unpublished.stream()
                .map(episode -> new Choice(
                        episode.id().value(), episode.number() + ". " + episode.title(), isPromised(episode)))
                .toList();
        return new Block(series.id().value(), series.title(), series.zone().getId(), rows, others, waiting, choices);
    }

    private static boolean isPromised(Episode episode) {
        return episode.state() instanceof EpisodeState.Scheduled;
    }

    /** @param proposed the lesson to choose at first: the lessons without an hour take the free ones in their order */
    private Row row(Slot slot, String proposed, Reader reader) {
        return new Row(
                slot.local().toString(),
                hour(slot.local(), reader),
                slot.exists(),
                proposed,
                slot.lesson().map(episode -> entry(episode, reader)));
    }

    private static String hour(LocalDateTime local, Reader reader) {
        return DateTimeFormatter.ofLocalizedDateTime(FormatStyle.FULL, FormatStyle.SHORT)
                .withLocale(reader.locale())
                .format(local);
    }

    private Entry entry(Episode episode, Reader reader) {
        return new Entry(
                episode.id().value(),
                path(episode),
                episode.number(),
                episode.title(),
                publishing.standing(episode, reader),
                publishing.troubles(episode));
    }

    private Waiting waiting(EducatorId who, Episode episode, boolean lookedOver) {
        var missing = lookedOver ? missing(who, episode) : Optional.<Message>empty();
        return new Waiting(path(episode), episode.number(), episode.title(), missing);
    }

    private Optional<Message> missing(EducatorId who, Episode episode) {
        int open =
                desk.work(who, () -> publishing.verdict(who, episode)).holding().size();
        return Optional.of(open == 0 ? Message.of("desk.weeks.ready") : Message.of("desk.weeks.missing", open));
    }

    private static String path(Episode episode) {
        return "/desk/episodes/" + episode.id();
    }

    /** What the page shows. */
    public record View(List<Block> series, Optional<Held> held) {}

    /**
     * A lesson that could not be promised, and why.
     *
     * @param local the hour that was wanted, as the form sent it
     */
    public record Held(String id, String local, String path, String title, FieldProblems problems) {
        private Optional<String> chosenFor(Slot slot) {
            return slot.local().toString().equals(local) ? Optional.of(id) : Optional.empty();
        }
    }

    /**
     * A series.
     *
     * @param rows the coming hours of its rhythm; none where it has none
     * @param others lessons that are promised for other hours
     * @param waiting lessons without an hour
     * @param choices what can be promised for a free hour, or moved to it
     */
    public record Block(
            String id,
            String title,
            String zone,
            List<Row> rows,
            List<Entry> others,
            List<Waiting> waiting,
            List<Choice> choices) {}

    /**
     * An hour of a rhythm.
     *
     * @param local as the form sends it
     * @param proposed the id of the lesson that is chosen at first; empty where there is none to propose
     */
    public record Row(String local, String hour, boolean exists, String proposed, Optional<Entry> lesson) {
        public boolean isFree() {
            return exists && lesson.isEmpty();
        }
    }

    /** A promised lesson. */
    public record Entry(
            String id, String path, int number, String title, EpisodeStatus standing, List<Message> troubles) {}

    /** A lesson without an hour; {@code missing} is what its way out still lacks, where that was looked over. */
    public record Waiting(String path, int number, String title, Optional<Message> missing) {}

    /** A lesson to choose; {@code promised} where it would be moved. */
    public record Choice(String id, String label, boolean promised) {}
}
