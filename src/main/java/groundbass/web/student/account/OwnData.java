package groundbass.web.student.account;

import groundbass.audience.download.Download;
import groundbass.audience.news.NewsReader;
import groundbass.audience.news.NewsReaders;
import groundbass.audience.news.NewsRequests;
import groundbass.audience.question.Question;
import groundbass.audience.question.Questions;
import groundbass.audience.statistics.Statistics;
import groundbass.audience.statistics.TakingPart;
import groundbass.audience.student.Consent;
import groundbass.audience.student.Consents;
import groundbass.audience.student.OpenSession;
import groundbass.audience.student.Person;
import groundbass.audience.student.Practice;
import groundbass.audience.student.PractisedLine;
import groundbass.audience.student.Sessions;
import groundbass.audience.student.SignInRequest;
import groundbass.audience.student.SignIns;
import groundbass.audience.student.Student;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.EpisodeTitle;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.post.Outbox;
import groundbass.post.OutboxMail;
import groundbass.post.Refusal;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;

/** All that is kept about a student, for the student: in a common machine-readable form, times in UTC (ISO 8601). */
public final class OwnData {
    private final Consents consents;
    private final Statistics statistics;
    private final Sessions sessions;
    private final SignIns signIns;
    private final Practice practice;
    private final Questions questions;
    private final NewsReaders newsReaders;
    private final NewsRequests newsRequests;
    private final Outbox outbox;
    private final Episodes episodes;
    private final SeriesCatalog catalog;

    public OwnData(
            Consents consents,
            Statistics statistics,
            Sessions sessions,
            SignIns signIns,
            Practice practice,
            Questions questions,
            NewsReaders newsReaders,
            NewsRequests newsRequests,
            Outbox outbox,
            Episodes episodes,
            SeriesCatalog catalog) {
        this.consents = consents;
        this.statistics = statistics;
        this.sessions = sessions;
        this.signIns = signIns;
        this.practice = practice;
        this.questions = questions;
        this.newsReaders = newsReaders;
        this.newsRequests = newsRequests;
        this.outbox = outbox;
        this.episodes = episodes;
        this.catalog = catalog;
    }

    /** To be written as JSON. */
    Map<String, Object> of(Student student, Optional<Instant> lastUsed) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("email", student.email().value());
        data.put("language", student.locale().toLanguageTag());
        data.put("since", student.createdAt().toString());
        lastUsed.ifPresent(at -> data.put("lastUsed", at.toString()));
        data.put("consents", consents.of(student.id()).stream().map(OwnData::of).toList());
        data.put("sessions", sessions(student));
        data.put(
                "signInLinks",
                signIns.of(student.email()).stream().map(OwnData::of).toList());
        data.put("news", newsReaders.of(student.email()).stream().map(this::of).toList());
        data.put(
                "newsAskedFor",
                newsRequests.of(student.email()).stream().map(this::of).toList());
        outbox.refusal(student.email()).ifPresent(refusal -> data.put("addressRefused", of(refusal)));
        data.put("emails", outbox.to(student.email()).stream().map(OwnData::of).toList());
        data.put("downloads", downloads(student));
        data.put(
                "takingPart",
                statistics.takingPart(student.id()).stream().map(this::of).toList());
        data.put("practised", practised(student));
        data.put("favourites", favourites(student));
        data.put("questions", named(questions.of(student.id()), Question::episode, OwnData::of));
        return data;
    }

    private List<Map<String, Object>> sessions(Student student) {
        return sessions.of(new Person.OfStudent(student.id()), Optional.empty()).stream()
                .map(OwnData::of)
                .toList();
    }

    private List<Map<String, Object>> downloads(Student student) {
        return named(
                statistics.ofStudent(student.id()), download -> download.file().episode(), OwnData::of);
    }

    private List<Map<String, Object>> practised(Student student) {
        return named(practice.of(student.id()), PractisedLine::episode, OwnData::of);
    }

    private List<Map<String, Object>> favourites(Student student) {
        return named(practice.favourites(student.id()), id -> id, OwnData::of);
    }

    /** What the lesson is called today; its name at the time is not kept, and one that is gone has none. */
    private <T> List<Map<String, Object>> named(
            List<T> all,
            Function<T, EpisodeId> lesson,
            BiFunction<T, Optional<EpisodeTitle>, Map<String, Object>> told) {
        var titles = episodes.titles(all.stream().map(lesson).toList());
        return all.stream()
                .map(one -> told.apply(one, Optional.ofNullable(titles.get(lesson.apply(one)))))
                .toList();
    }

    private static Map<String, Object> of(Consent consent) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("purpose", consent.purpose().name().toLowerCase(Locale.ROOT));
        data.put("wording", consent.wording());
        data.put("given", consent.givenAt().toString());
        consent.withdrawnAt().map(Instant::toString).ifPresent(at -> data.put("withdrawn", at));
        return data;
    }

    private static Map<String, Object> of(OpenSession session) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("device", session.device().name().toLowerCase(Locale.ROOT));
        data.put("since", session.createdAt().toString());
        data.put("seen", session.seenAt().toString());
        return data;
    }

    private static Map<String, Object> of(SignInRequest request) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("asked", request.askedAt().toString());
        data.put("validUntil", request.expiresAt().toString());
        request.usedAt().map(Instant::toString).ifPresent(at -> data.put("used", at));
        return data;
    }

    private Map<String, Object> of(NewsReader reader) {
        Map<String, Object> data = new LinkedHashMap<>();
        catalog.find(reader.series()).ifPresent(series -> data.put("series", series.title()));
        data.put("agreedTo", reader.wording());
        data.put("askedOn", reader.askedOn().value());
        data.put("asked", reader.askedAt().toString());
        data.put("agreed", reader.agreedAt().toString());
        reader.endedAt().map(Instant::toString).ifPresent(at -> data.put("ended", at));
        return data;
    }

    private Map<String, Object> of(NewsRequests.Asked asked) {
        Map<String, Object> data = new LinkedHashMap<>();
        catalog.find(asked.series()).ifPresent(series -> data.put("series", series.title()));
        data.put("asked", asked.askedAt().toString());
        asked.usedAt().map(Instant::toString).ifPresent(at -> data.put("agreed", at));
        return data;
    }

    private Map<String, Object> of(TakingPart part) {
        Map<String, Object> data = new LinkedHashMap<>();
        catalog.find(part.series()).ifPresent(series -> data.put("series", series.title()));
        data.put("sinceWeekOf", part.joined().toString());
        data.put("weeks", part.weeks());
        return data;
    }

    private static Map<String, Object> of(Refusal refusal) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("at", refusal.refusedAt().toString());
        data.put("reply", refusal.reply());
        return data;
    }

    private static Map<String, Object> of(OutboxMail letter) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("written", letter.createdAt().toString());
        data.put("subject", letter.message().subject());
        data.put("text", letter.message().text());
        letter.delivery().map(way -> way.name().toLowerCase(Locale.ROOT)).ifPresent(way -> data.put("state", way));
        return data;
    }

    private static Map<String, Object> of(Question question, Optional<EpisodeTitle> names) {
        var data = of(question.episode(), names);
        data.put("about", question.topic().value());
        data.put("line", question.line());
        question.place().ifPresent(place -> data.put("place", place.value()));
        data.put("question", question.words());
        data.put("asked", question.askedAt().toString());
        question.outcome().ifPresent(outcome -> data.put("outcome", outcome.value()));
        question.answer().ifPresent(answer -> data.put("answer", answer));
        question.settledAt().map(Instant::toString).ifPresent(at -> data.put("settled", at));
        return data;
    }

    private static Map<String, Object> of(PractisedLine line, Optional<EpisodeTitle> names) {
        var data = of(line.episode(), names);
        data.put("line", line.line());
        data.put("day", line.practisedOn().toString());
        data.put("beatsAMinute", line.tempo());
        data.put("from", line.fromPlace());
        data.put("to", line.toPlace());
        return data;
    }

    private static Map<String, Object> of(EpisodeId episode, Optional<EpisodeTitle> names) {
        Map<String, Object> data = new LinkedHashMap<>();
        names.ifPresent(found -> {
            data.put("series", found.series());
            data.put("lesson", found.title());
        });
        data.put("episode", episode.value());
        return data;
    }

    private static Map<String, Object> of(Download download, Optional<EpisodeTitle> names) {
        var data = of(download.file().episode(), names);
        data.put("release", download.file().release());
        data.put("file", download.file().name());
        data.put("started", download.startedAt().toString());
        data.put("state", download.state().name().toLowerCase(Locale.ROOT));
        data.put("bytesSent", download.bytesSent());
        return data;
    }
}
