package groundbass.web.desk.calendar;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.EpisodeState;
import groundbass.catalog.episode.EpisodeState.Scheduled;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.ReleaseRhythm;
import groundbass.catalog.series.Rhythms;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.effort.Busy;
import groundbass.publishing.LessonLook;
import groundbass.publishing.Seen;
import groundbass.publishing.SiteLook;
import groundbass.publishing.Slot;
import groundbass.publishing.preflight.CheckedItem;
import groundbass.publishing.preflight.CheckedLesson;
import groundbass.text.Message;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.calendar.WeeksView.Cell;
import groundbass.web.desk.calendar.WeeksView.Choice;
import groundbass.web.desk.calendar.WeeksView.Entry;
import groundbass.web.desk.calendar.WeeksView.FreeHour;
import groundbass.web.desk.calendar.WeeksView.Held;
import groundbass.web.desk.calendar.WeeksView.Kind;
import groundbass.web.desk.calendar.WeeksView.Lacks;
import groundbass.web.desk.calendar.WeeksView.Moved;
import groundbass.web.desk.calendar.WeeksView.Other;
import groundbass.web.desk.calendar.WeeksView.SeriesHead;
import groundbass.web.desk.calendar.WeeksView.Waiting;
import groundbass.web.desk.calendar.WeeksView.Week;
import groundbass.web.view.Reader;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Lays the coming hours of all series out by weeks, each with what is promised for it and what that still lacks. */
final class WeekTable {
    /** More series than these stand under one another, each hour with the name of its series. */
    static final int MOST_COLUMNS = 4;

    private static final int HOURS = 8;

    /** Each is proofread and looked over for what is missing. */
    private static final int MOST_LOOKED_OVER = 24;

    private final DeskContext desk;
    private final SeriesCatalog catalog;
    private final Episodes episodes;
    private final Rhythms rhythms;
    private final PublishingViews publishing;
    private final Clock clock;

    WeekTable(
            DeskContext desk,
            SeriesCatalog catalog,
            Episodes episodes,
            Rhythms rhythms,
            PublishingViews publishing,
            Clock clock) {
        this.desk = desk;
        this.catalog = catalog;
        this.episodes = episodes;
        this.rhythms = rhythms;
        this.publishing = publishing;
        this.clock = clock;
    }

    /** @param touched the lesson of which something was done */
    WeeksView of(EducatorId who, Reader reader, Optional<Held> held, Optional<Episode> touched) {
        var all = catalog.open(who, Deed.WRITE);
        var inHand = all.stream().map(series -> episodes.inHand(series.id(), 0)).toList();
        var site = publishing.look();
        var looks = new Looks(who, site, inHand);
        var blocks = IntStream.range(0, all.size())
                .mapToObj(i -> new Block(all.get(i), i + 1, inHand.get(i), reader, held, looks))
                .toList();
        var cells = blocks.stream().flatMap(block -> block.cells().stream()).toList();
        var moved = touched.map(episode -> new Moved(
                episode.id().value(),
                episode.title(),
                publishing.standing(site.at(who, episode), reader).state()));
        return new WeeksView(blocks.stream().map(Block::head).toList(), weeks(cells, reader), held, moved);
    }

    private static List<Week> weeks(List<Cell> cells, Reader reader) {
        var byMonday = cells.stream()
                .sorted(Comparator.comparing(Cell::local)
                        .thenComparingInt(cell -> cell.series().column()))
                .collect(Collectors.groupingBy(WeekTable::monday, TreeMap::new, Collectors.toList()));
        return byMonday.entrySet().stream()
                .map(week -> new Week(Message.of("desk.weeks.week", date(week.getKey(), reader)), week.getValue()))
                .toList();
    }

    private static LocalDate monday(Cell cell) {
        return LocalDate.parse(cell.day()).with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    }

    private static String date(LocalDate day, Reader reader) {
        return DateTimeFormatter.ofLocalizedDate(FormatStyle.LONG)
                .withLocale(reader.writing())
                .format(day);
    }

    private static String hour(LocalDateTime local, Reader reader) {
        return DateTimeFormatter.ofLocalizedDateTime(FormatStyle.FULL, FormatStyle.SHORT)
                .withLocale(reader.writing())
                .format(local);
    }

    private static String label(Episode episode) {
        return episode.number() + ". " + episode.title();
    }

    /** A lesson and how it stands, as one value of a form. */
    private static String named(Episode episode) {
        return episode.id() + " " + Seen.of(episode.state()).token();
    }

    private boolean isDue(Episode episode) {
        return promise(episode).filter(one -> one.isDue(clock.instant())).isPresent();
    }

    private static Optional<Scheduled> promise(Episode episode) {
        return episode.state() instanceof EpisodeState.Scheduled promise ? Optional.of(promise) : Optional.empty();
    }

    /**
     * Looks lessons over, so many for a page and as long as their educator may work the machine: first what goes out next, in
     * whichever series. The others lead to the page on which that is done. What is read of a lesson, and of the site, is
     * read once.
     */
    private final class Looks {
        private final Map<EpisodeId, LessonLook> lessons;
        private final Map<EpisodeId, Look> looks = new HashMap<>();

        /** @param inHand the lessons of each series that are not out, in their order */
        Looks(EducatorId who, SiteLook site, List<List<Episode>> inHand) {
            this.lessons = inHand.stream()
                    .flatMap(List::stream)
                    .collect(Collectors.toMap(Episode::id, episode -> site.at(who, episode)));
            var next = inHand.stream()
                    .flatMap(List::stream)
                    .sorted(Comparator.comparing(
                            episode -> promise(episode).map(Scheduled::at).orElse(Instant.MAX)))
                    .limit(MOST_LOOKED_OVER)
                    .toList();
            try {
                for (var episode : next) {
                    looks.put(episode.id(), desk.work(who, () -> look(lessons.get(episode.id()))));
                }
            } catch (Busy busy) {
                // the hours are told all the same
            }
        }

        private Look look(LessonLook lesson) {
            return new Look(lacks(lesson.checked()), publishing.troubles(lesson));
        }

        EpisodeStatus standing(Episode episode, Reader reader) {
            return publishing.standing(lessons.get(episode.id()), reader);
        }

        Optional<Lacks> lacks(Episode episode) {
            return Optional.ofNullable(looks.get(episode.id())).map(Look::lacks);
        }

        List<Message> troubles(Episode episode) {
            return Optional.ofNullable(looks.get(episode.id()))
                    .map(Look::troubles)
                    .orElseGet(List::of);
        }

        private static Lacks lacks(CheckedLesson checked) {
            int open = checked.holding().size();
            var sum = open == 0 ? Message.of("desk.weeks.ready") : Message.of("desk.weeks.missing", open);
            var points = checked.items().stream()
                    .filter(item -> item.state() == CheckedItem.State.KEEPS_BACK)
                    .map(item -> item.point().title())
                    .toList();
            return new Lacks(sum, points);
        }
    }

    /** What one lesson lacks, and what stood in the way of a promised one. */
    private record Look(Lacks lacks, List<Message> troubles) {}

    /** One series. */
    private final class Block {
        private final Reader reader;
        private final Optional<Held> held;
        private final Looks looks;
        private final ZoneId zone;
        private final List<Episode> promised;
        private final List<Episode> undated;
        private final Optional<ReleaseRhythm> rhythm;
        private final List<Slot> slots;
        private final SeriesHead head;
        private final List<Cell> cells;

        Block(Series series, int column, List<Episode> inHand, Reader reader, Optional<Held> held, Looks looks) {
            this.reader = reader;
            this.held = held;
            this.looks = looks;
            this.zone = series.zone();
            this.promised = inHand.stream()
                    .filter(episode -> promise(episode).isPresent())
                    .toList();
            this.undated = inHand.stream()
                    .filter(episode -> promise(episode).isEmpty())
                    .toList();
            this.rhythm = rhythms.of(series.id());
            this.slots = rhythm.map(one -> Slot.coming(one, zone, promised, clock.instant(), HOURS))
                    .orElse(List.of());
            var entries = promised.stream().collect(Collectors.toMap(Episode::id, this::entry));
            var waiting = undated.stream().map(this::waiting).toList();
            this.head = new SeriesHead(
                    series.id().value(), series.title(), zone.getId(), column, rhythm.isPresent(), waiting);
            this.cells = cells(episode -> entries.get(episode.id()));
        }

        SeriesHead head() {
            return head;
        }

        List<Cell> cells() {
            return cells;
        }

        private List<Cell> cells(Function<Episode, Entry> entries) {
            var all = new ArrayList<Cell>();
            var proposals =
                    undated.stream().map(episode -> episode.id().value()).iterator();
            slots.forEach(slot -> all.add(cell(slot, proposals, entries)));
            Slot.beside(slots, promised).forEach(episode -> all.add(beside(episode, entries)));
            breaks().forEach(all::add);
            return all;
        }

        /** The lessons without an hour take the free ones in their order; what was chosen before stays chosen. */
        private Cell cell(Slot slot, Iterator<String> proposals, Function<Episode, Entry> entries) {
            String local = slot.local().toString();
            String next = slot.isFree() && proposals.hasNext() ? proposals.next() : "";
            String proposed = held.flatMap(one -> one.chosenFor(local)).orElse(next);
            return new Cell(
                    Kind.HOUR,
                    head,
                    local,
                    hour(slot.local(), reader),
                    slot.exists(),
                    proposed,
                    slot.lesson().map(entries),
                    slot.isFree() ? choices() : List.of());
        }

        private List<Choice> choices() {
            var free = undated.stream()
                    .map(episode ->
                            new Choice(episode.id().value(), episode.id().value(), label(episode), false));
            var moved =
                    movable().map(episode -> new Choice(episode.id().value(), named(episode), label(episode), true));
            return Stream.concat(free, moved).toList();
        }

        /** What is promised for an hour that is still to come: what is due may be going out at this moment. */
        private Stream<Episode> movable() {
            return promised.stream().filter(episode -> !isDue(episode));
        }

        /** On the clocks of the series, wherever it was promised; an hour of the rhythm where it comes after those shown. */
        private Cell beside(Episode episode, Function<Episode, Entry> entries) {
            var local = local(promise(episode).orElseThrow().at()).truncatedTo(ChronoUnit.MINUTES);
            boolean later = !slots.isEmpty()
                    && local.isAfter(slots.get(slots.size() - 1).local());
            boolean timed = later && rhythm.orElseThrow().isHour(local);
            return cell(timed ? Kind.HOUR : Kind.BESIDE, local, Optional.of(entries.apply(episode)));
        }

        private LocalDateTime local(Instant at) {
            return LocalDateTime.ofInstant(at, zone);
        }

        private Cell cell(Kind kind, LocalDateTime local, Optional<Entry> lesson) {
            return new Cell(kind, head, local.toString(), hour(local, reader), true, "", lesson, List.of());
        }

        /** Breaks among the hours that are shown. */
        private Stream<Cell> breaks() {
            if (slots.isEmpty()) {
                return Stream.of();
            }
            var now = local(clock.instant());
            var last = slots.get(slots.size() - 1).local();
            return rhythm.orElseThrow().breaks().stream()
                    .filter(rhythm.orElseThrow()::holds)
                    .map(day -> day.atTime(rhythm.orElseThrow().time()))
                    .filter(hour -> hour.isAfter(now) && hour.isBefore(last))
                    .map(hour -> cell(Kind.BREAK, hour, Optional.empty()));
        }

        private Entry entry(Episode episode) {
            return new Entry(
                    episode.id().value(),
                    DeskContext.path(episode),
                    episode.number(),
                    episode.title(),
                    Seen.of(episode.state()).token(),
                    looks.standing(episode, reader),
                    looks.troubles(episode),
                    looks.lacks(episode),
                    isDue(episode) ? List.of() : hours(),
                    isDue(episode) ? List.of() : others(episode));
        }

        private List<FreeHour> hours() {
            return slots.stream()
                    .filter(Slot::isFree)
                    .map(slot -> new FreeHour(slot.local().toString(), hour(slot.local(), reader)))
                    .toList();
        }

        private List<Other> others(Episode episode) {
            return movable()
                    .filter(other -> !other.id().equals(episode.id()))
                    .map(other -> new Other(named(other), label(other)))
                    .toList();
        }

        private Waiting waiting(Episode episode) {
            return new Waiting(
                    episode.id().value(),
                    DeskContext.path(episode),
                    episode.number(),
                    episode.title(),
                    looks.lacks(episode));
        }
    }
}
