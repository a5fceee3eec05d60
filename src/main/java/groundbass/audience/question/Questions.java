package groundbass.audience.question;

import groundbass.audience.student.LetterHead;
import groundbass.audience.student.StudentId;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.SeriesPart;
import groundbass.post.EmailAddress;
import groundbass.post.Outbox;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** Questions as rows. Each letter is written in the transaction that causes it. */
public final class Questions {
    /** How many the desk shows at once, those that wait first. */
    private static final int SHOWN = 200;

    private static final String SELECT = """
            select q.id, q.episode_id as episode, e.title as lesson, s.email, s.locale, q.topic, q.line, q.place, q.words,
                q.asked_at, q.outcome, q.answer, q.settled_at
            from question q join student s on s.id = q.student_id join episode e on e.id = q.episode_id\s""";
    private static final String SEEN = "where e.series_id in " + Deed.WRITE.series();

    private final Jdbi jdbi;
    private final Outbox outbox;
    private final Supplier<LetterHead> head;
    private final Supplier<Locale> deskLanguage;
    private final Clock clock;

    /**
     * @param head who writes, asked anew for each letter
     * @param deskLanguage in which educators get theirs
     */
    public Questions(Jdbi jdbi, Outbox outbox, Supplier<LetterHead> head, Supplier<Locale> deskLanguage, Clock clock) {
        this.jdbi = jdbi;
        this.outbox = outbox;
        this.head = head;
        this.deskLanguage = deskLanguage;
        this.clock = clock;
    }

    /** Keeps a question and tells those who write in the lesson. */
    public void ask(StudentId student, TypedQuestion asked) {
        jdbi.useTransaction(handle -> {
            var id = QuestionId.next();
            insert(handle, id, student, asked);
            var question = find(handle, id).orElseThrow();
            writers(handle, asked)
                    .forEach(to -> outbox.put(
                            new QuestionLetters(head.get()).asked(to, deskLanguage.get(), question, clock.instant())));
        });
    }

    /** What was asked about lessons in which an educator writes: first what waits, in the order in which it was asked, then the newest. */
    public List<Question> to(EducatorId who) {
        return to(who, Optional.empty());
    }

    /** The same about one lesson; empty where it is somebody else's. */
    public List<Question> to(EducatorId who, EpisodeId lesson) {
        return to(who, Optional.of(lesson));
    }

    private List<Question> to(EducatorId who, Optional<EpisodeId> lesson) {
        String about = lesson.isPresent() ? "and q.episode_id = :lesson " : "";
        return jdbi.withHandle(handle -> {
            var query = handle.createQuery(SELECT + SEEN + about + """
                            order by case when q.settled_at is null then 0 else 1 end,
                                case when q.settled_at is null then q.asked_at end, q.asked_at desc, q.id
                            fetch first :most rows only""")
                    .bind("who", who)
                    .bind("most", SHOWN);
            lesson.ifPresent(id -> query.bind("lesson", id));
            return query.mapTo(Question.class).list();
        });
    }

    /** How many of them wait. */
    public int waiting(EducatorId who) {
        return jdbi.withHandle(
                handle -> handle.createQuery("select count(*) from question q join episode e on e.id = q.episode_id "
                                + SEEN + "and q.settled_at is null")
                        .bind("who", who)
                        .mapTo(Integer.class)
                        .one());
    }

    /** All that a student asked, the newest first. */
    public List<Question> of(StudentId student) {
        return jdbi.withHandle(
                handle -> handle.createQuery(SELECT + "where q.student_id = :student order by q.asked_at desc, q.id")
                        .bind("student", student)
                        .mapTo(Question.class)
                        .list());
    }

    /**
     * Settles a question that waits, and writes its student what became of it.
     *
     * @return whether there was one of this educator's that waited
     */
    public boolean settle(EducatorId who, QuestionId id, QuestionEnd outcome, String answer) {
        return jdbi.inTransaction(handle -> {
            var question = handle.createQuery(SELECT + SEEN + "and q.id = :id")
                    .bind("who", who)
                    .bind("id", id)
                    .mapTo(Question.class)
                    .findOne();
            boolean mine = question.isPresent() && write(handle, id, outcome, answer);
            question.filter(found -> mine)
                    .ifPresent(found -> outbox.put(
                            new QuestionLetters(head.get()).settled(found, outcome, answer, clock.instant())));
            return mine;
        });
    }

    /** Two windows may settle it at once: one of them does. */
    private boolean write(Handle handle, QuestionId id, QuestionEnd outcome, String answer) {
        return handle.createUpdate("""
                        update question set outcome = :outcome, answer = :answer, settled_at = :now
                        where id = :id and settled_at is null""")
                        .bind("outcome", outcome)
                        .bind("answer", Optional.of(answer).filter(text -> !text.isBlank()))
                        .bind("now", clock.instant())
                        .bind("id", id)
                        .execute()
                == 1;
    }

    private void insert(Handle handle, QuestionId id, StudentId student, TypedQuestion asked) {
        handle.createUpdate("""
                        insert into question (id, student_id, episode_id, topic, line, place, words, asked_at)
                        values (:id, :student, :episode, :topic, :line, :place, :words, :now)""")
                .bind("id", id)
                .bind("student", student)
                .bindMethods(asked)
                .bind("now", clock.instant())
                .execute();
    }

    private static Optional<Question> find(Handle handle, QuestionId id) {
        return handle.createQuery(SELECT + "where q.id = :id")
                .bind("id", id)
                .mapTo(Question.class)
                .findOne();
    }

    /** Who can answer: the owner of the series and its editors. */
    private static List<EmailAddress> writers(Handle handle, TypedQuestion asked) {
        return handle
                .createQuery("""
                        select d.email from educator d
                        where d.ended_at is null and (
                            d.id in (select r.educator_id from series r
                                join episode e on e.series_id = r.id where e.id = :episode)
                            or d.id in (select c.educator_id from series_colleague c
                                join episode e on e.series_id = c.series_id where e.id = :episode and c.part = :part))
                        order by d.created_at, d.id""")
                .bind("episode", asked.episode())
                .bind("part", SeriesPart.EDITOR)
                .mapTo(String.class)
                .stream()
                .flatMap(email -> EmailAddress.read(email).stream())
                .toList();
    }
}
