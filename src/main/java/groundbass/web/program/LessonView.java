package groundbass.web.program;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeState;
import groundbass.catalog.episode.Withdrawal;
import groundbass.web.shell.Pages;
import java.util.Map;
import java.util.Optional;

/** A lesson as programs are told of it, and the parts of where it stands. */
record LessonView(Pages pages) {
    static String address(Episode lesson) {
        return Door.ROOT + "/lessons/" + lesson.id();
    }

    Map<String, Object> of(Episode lesson) {
        return Members.of("id", lesson.id().value())
                .and("series", lesson.series().value())
                .and("number", lesson.number())
                .and("title", lesson.title())
                .and("level", lesson.level().code())
                .and("summary", lesson.summary())
                .and("state", state(lesson))
                .and("promise", promise(lesson))
                .and("publishedAt", lesson.publishedAt().map(Object::toString))
                .and("withdrawal", withdrawal(lesson))
                .and("page", pages.address("/e/" + lesson.id()).toString())
                .map();
    }

    private static String state(Episode lesson) {
        if (lesson.isPublished()) {
            return lesson.isOut() ? "out" : "withdrawn";
        }
        return lesson.state() instanceof EpisodeState.Scheduled ? "promised" : "draft";
    }

    /** For which hour it is promised; empty where it is not. */
    static Optional<Map<String, Object>> promise(Episode lesson) {
        return lesson.state() instanceof EpisodeState.Scheduled promise ? Optional.of(hour(promise)) : Optional.empty();
    }

    private static Map<String, Object> hour(EpisodeState.Scheduled promise) {
        return Members.of("hour", promise.local().toString())
                .and("zone", promise.zone().getId())
                .and("at", promise.at().toString())
                .and("promisedAt", promise.madeAt().toString())
                .map();
    }

    /** That it was taken back; empty where it was not. */
    static Optional<Map<String, Object>> withdrawal(Episode lesson) {
        return lesson.withdrawal().map(LessonView::reason);
    }

    private static Map<String, Object> reason(Withdrawal withdrawal) {
        return Members.of("at", withdrawal.at().toString())
                .and("why", withdrawal.why())
                .map();
    }
}
