package groundbass.web.general;

import java.util.List;

/**
 * All that is stored, and where. The privacy notice is made from it, and a test holds it against migrations, cookies,
 * scripts and letters: whoever stores something new says here what it is.
 */
final class StoredThings {
    /** What is stored about those who take lessons, as the notice tells it. */
    static final List<KeptThing> OF_STUDENTS = List.of(
            KeptThing.of("account").inTables("student", "consent").inLetters("audience.idle.subject"),
            KeptThing.of("links")
                    .inTables("sign_in")
                    .inCookies("way-back", "asked")
                    .inLetters("audience.signin.subject"),
            KeptThing.of("sessions").inTables("session").inCookies("session"),
            KeptThing.of("tries").inTables("tries"),
            KeptThing.of("letters").inTables("outbox"),
            KeptThing.of("news")
                    .inTables("news_reader", "news_request", "news_letter", "refused_address")
                    .inLetters("news.ask.subject", "news.lesson.subject", "news.correction.subject"),
            KeptThing.of("downloads").inTables("download", "taking_student").inCookies("take"),
            KeptThing.of("practised").inTables("practised", "favourite"),
            KeptThing.of("questions")
                    .inTables("question")
                    .inLetters(
                            "question.asked.subject",
                            "question.rights.subject",
                            "question.answer.subject",
                            "question.answer.rights.subject"),
            KeptThing.of("anonymous"),
            KeptThing.of("visits").inTables("visit_sum", "played_part", "repeated_bar", "course_click"),
            KeptThing.of("language").inCookies("language"),
            KeptThing.of("flash").inCookies("flash"),
            KeptThing.of("browser").inStores("play/remember.js", "practised/marks.js", "sheet.js"),
            KeptThing.of("copies").inStores("keep/copies.js"));

    /** What is stored about those who teach. */
    static final List<KeptThing> OF_EDUCATORS = List.of(
            KeptThing.of("desk")
                    .inTables(
                            "educator",
                            "setup_code",
                            "password_reset",
                            "preview_link",
                            "second_factor",
                            "recovery_code")
                    .inLetters(
                            "audience.reset.subject",
                            "audience.password.subject",
                            "audience.address.subject",
                            "desk.outbox.test.subject",
                            "publishing.letter.subject"),
            KeptThing.of("colleagues")
                    .inTables("site_owner", "series_colleague", "invitation")
                    .inLetters("people.letter.subject", "people.handed.subject"),
            KeptThing.of("programs").inTables("program_token", "program_answer"),
            KeptThing.of("known").inCookies("known"),
            KeptThing.of("audit").inTables("audit"),
            KeptThing.of("writing")
                    .inStores(
                            "desk/draft/draft.js", "desk/line/text.js", "desk/line/passage.js", "desk/bench/store.js"));

    /** What is about lessons and the site, and about nobody who takes lessons. */
    static final List<String> TABLES_OF_LESSONS = List.of(
            "setting",
            "series",
            "series_rhythm",
            "series_break",
            "series_style",
            "series_outlook",
            "news_text",
            "series_beginning",
            "episode",
            "draft",
            "revision",
            "upload",
            "picture",
            "release",
            "release_file",
            "lesson_traits",
            "made_audio",
            "scheduled_tasks",
            "hour_notice",
            "accepted_remark",
            "broken_file",
            "summed_up",
            "taken_file",
            "taken_hour",
            "taken_series",
            "taken_series_week",
            "taken_week",
            "taken_cohort",
            "taken_clock",
            "taken_departed",
            "pulse",
            "node");

    private StoredThings() {}
}
