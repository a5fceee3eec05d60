package groundbass.web.student.lesson;

import groundbass.document.Level;
import groundbass.release.find.Choices;
import groundbass.release.find.FoundLesson;
import groundbass.release.find.LessonIndex;
import groundbass.release.find.LessonQuery.Order;
import groundbass.text.Message;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.shell.Turned;
import groundbass.web.shell.limit.Limit;
import groundbass.web.shell.limit.RateLimits;
import groundbass.web.view.EpisodeCard;
import groundbass.web.view.FieldProblems;
import groundbass.web.view.PageOf;
import groundbass.web.view.Reader;
import groundbass.web.view.TechniqueWords;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Lessons found by what they are about: a form of which every answer has an address of its own. */
public final class FindPage implements PageGroup {
    /** Lessons on a page. */
    private static final int SHOWN = 50;

    private static final Duration FRESH = Duration.ofSeconds(10);

    private final Pages pages;
    private final LessonIndex index;
    private final ReleaseContents contents;
    private final RateLimits limits;
    private final TimedCache<Integer, Choices> choices;

    public FindPage(Pages pages, LessonIndex index, ReleaseContents contents, RateLimits limits, Clock clock) {
        this.pages = pages;
        this.index = index;
        this.contents = contents;
        this.limits = limits;
        this.choices = TimedCache.small(clock, FRESH, 1);
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(FindForm.PATH, Role.ANYONE, this::find);
    }

    private void find(Context ctx) {
        var form = FindForm.of(ctx);
        if (FindForm.isWordy(ctx)) {
            ctx.redirect(form.address(), HttpStatus.FOUND);
            return;
        }
        limits.demand(ctx, Limit.SEARCH);
        var page = new PageOf(form.address(), Turned.to(ctx, SHOWN).number(), SHOWN);
        pages.show(ctx, "student/find", view(form, page, pages.reader(ctx)));
    }

    private View view(FindForm form, PageOf page, Reader reader) {
        var known = choices.get(0, () -> Optional.of(index.choices())).orElseThrow();
        var groups = TechniqueWords.groups(known.techniques(), reader);
        var query = form.query(groups.values());
        int all = index.count(query);
        if (page.number() > 1 && page.skipped() >= all) {
            throw new NotFoundResponse();
        }
        var found = index.find(query, page.skipped(), page.size()).stream()
                .map(lesson -> found(lesson, reader))
                .toList();
        return new View(
                form,
                new Offers(known, groups, form, reader),
                all,
                found,
                page.turning(all),
                form.problems(),
                !form.address().equals(FindForm.PATH));
    }

    private Found found(FoundLesson lesson, Reader reader) {
        var card = new EpisodeCard(
                Paths.of(lesson.series(), lesson.number()),
                lesson.number(),
                lesson.title(),
                lesson.seriesTitle(),
                contents.language(lesson.release()),
                reader.say(Message.of(lesson.level().messageKey())),
                TechniqueWords.of(lesson.techniqueWords(), reader),
                Optional.of(lesson.publishedAt().atZone(lesson.zone())),
                Optional.of(lesson.release())
                        .filter(release -> lesson.pictured())
                        .map(CardPictures::of));
        String key = KeyWords.of(lesson.keyName(), reader);
        return new Found(
                card, reader.say(Message.of("find.facts", key, lesson.meter(), lesson.tempo(), lesson.strings())));
    }

    /**
     * What the template shows.
     *
     * @param all how many there are on all pages
     * @param narrowed whether anything is asked for
     */
    public record View(
            FindForm typed,
            Offers offers,
            int all,
            List<Found> lessons,
            PageOf.Turning turning,
            FieldProblems problems,
            boolean narrowed) {}

    /** @param facts key, meter, tempo and strings of its line */
    public record Found(EpisodeCard card, String facts) {}

    /** What can be chosen in the form. */
    public record Offers(
            List<Offer> techniques,
            List<Offer> levels,
            List<Offer> keys,
            List<Offer> meters,
            List<Offer> strings,
            List<Offer> series,
            List<Offer> orders) {
        Offers(Choices known, Map<String, List<String>> groups, FindForm form, Reader reader) {
            this(
                    groups.entrySet().stream()
                            .map(group -> new Offer(
                                    group.getValue().get(0),
                                    group.getKey(),
                                    group.getValue().contains(form.technique())))
                            .toList(),
                    known.levels().stream()
                            .map(level -> Offer.of(level.code(), said(level, reader), form.level()))
                            .toList(),
                    known.keys().stream()
                            .map(key -> Offer.of(key, KeyWords.of(key, reader), form.key()))
                            .toList(),
                    known.meters().stream()
                            .map(meter -> Offer.of(meter, meter, form.meter()))
                            .toList(),
                    known.strings().stream()
                            .map(many -> Offer.of("" + many, "" + many, form.strings()))
                            .toList(),
                    known.series().stream()
                            .map(one -> Offer.of(one.slug().value(), one.title(), form.series()))
                            .toList(),
                    Stream.of(Order.values())
                            .map(order -> order(order, form.chosenOrder(), reader))
                            .toList());
        }

        private static String said(Level level, Reader reader) {
            return reader.say(Message.of(level.messageKey()));
        }

        /** The usual one needs no word in the address. */
        private static Offer order(Order order, Order chosen, Reader reader) {
            String word = FindForm.word(order);
            String value = order == Order.NEWEST ? "" : word;
            return new Offer(value, reader.say(Message.of("find.order." + word)), order == chosen);
        }
    }

    /** One choice: how the address says it, how it is read, whether it is made. */
    public record Offer(String value, String label, boolean chosen) {
        static Offer of(String value, String label, String chosen) {
            return new Offer(value, label, value.equals(chosen));
        }
    }
}
