package groundbass.web.student.visit;

import static groundbass.audience.Audience.FIRST;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.Story;
import groundbass.audience.student.StudentId;
import groundbass.audience.visit.LessonVisits;
import groundbass.audience.visit.Sitting;
import groundbass.audience.visit.VisitFigures;
import groundbass.audience.visit.VisitKind;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.SiteStanding;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.settings.SiteSettings;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import groundbass.web.Stage;
import groundbass.web.shell.AccessFilter;
import groundbass.web.shell.Installation;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Principal;
import groundbass.web.shell.PrincipalResolver;
import groundbass.web.shell.Role;
import groundbass.web.shell.SessionCookie;
import java.net.URI;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which requests are visits. Each is by another program, so that none is the second of a visitor. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class VisitCounterTest {
    private static final Installation HERE = Installation.at(URI.create("http://localhost:8420"));
    private static final Map<String, Principal> PRINCIPALS = Map.of(
            "student", Principal.of(StudentId.next()),
            "desk", Principal.of(EducatorId.next(), SiteStanding.OWNER));
    private static final PrincipalResolver KNOWN =
            token -> token.map(PRINCIPALS::get).orElse(Principal.UNKNOWN);

    private Database database;
    private LessonVisits visits;
    private Stage stage;
    private boolean counting = true;

    @BeforeAll
    void open() {
        database = BothDatabases.freshH2();
        var story = new Story(database);
        visits = new LessonVisits(database.jdbi(), story.audience.visitors, story.audience.clock);
        var lesson = new Episodes(database.jdbi()).find(FIRST).orElseThrow();
        var counter = new VisitCounter(visits, new AccessFilter(KNOWN, new SessionCookie(HERE)), this::settings);
        PageGroup group = routes -> {
            routes.get("/lesson", Role.ANYONE, ctx -> counter.viewed(ctx, lesson));
            routes.post(
                    "/sitting", Role.ANYONE, ctx -> counter.sat(ctx, lesson, new Sitting(1, List.of(), List.of("c"))));
            routes.post("/in", Role.ANYONE, ctx -> counter.signedIn(ctx, lesson, StudentId.next()));
        };
        stage = Stage.at(HERE, KNOWN, pages -> List.of(group));
    }

    @AfterAll
    void close() {
        stage.close();
        database.close();
    }

    private SiteSettings settings() {
        var usual = SiteSettings.USUAL;
        return new SiteSettings(
                usual.siteName(),
                usual.language(),
                false,
                usual.defaultZone(),
                Optional.empty(),
                counting,
                usual.triesLinks(),
                usual.imprint(),
                usual.accounts());
    }

    private long counted(VisitKind kind) {
        visits.write();
        return new VisitFigures(database.jdbi())
                .of(List.of(FIRST))
                .get(0)
                .of(kind)
                .inAll();
    }

    private long views(String method, String agent, String... headers) {
        long before = counted(VisitKind.VIEW);
        var request = stage.request().header("User-Agent", agent);
        for (int i = 0; i < headers.length; i += 2) {
            request.header(headers[i], headers[i + 1]);
        }
        request.request(method, "/lesson");
        return counted(VisitKind.VIEW) - before;
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "somebody opens it,             GET,  1, A window/1,      Sec-Fetch-Dest, document",
        "a browser that says nothing,   GET,  1, An old one/1,    X-Other,        x",
        "who does not mind,             GET,  1, Minds not/1,     DNT,            0",
        "a script keeps it,             GET,  0, A keeper/1,      Sec-Fetch-Dest, empty",
        "another page frames it,        GET,  0, A frame/1,       Sec-Fetch-Dest, iframe",
        "a browser fetches ahead,       GET,  0, Ahead/1,         Sec-Purpose,    prefetch",
        "and draws ahead,               GET,  0, Draws/1,         Sec-Purpose,    prefetch;prerender",
        "an older one fetches ahead,    GET,  0, Ahead/0,         Purpose,        prefetch",
        "who asks not to be counted,    GET,  0, Private/1,       Sec-GPC,        1",
        "and who asked earlier,         GET,  0, Private/0,       DNT,            1",
        "nobody reads the answer,       HEAD, 0, Header/1,        X-Other,        x",
        "a robot,                       GET,  0, Examplebot/2.1,  X-Other,        x",
        "a student,                     GET,  1, Examplebot/2.1,  Cookie,         session=student",
        "an educator,                   GET,  0, A desk/1,        Cookie,         session=desk"
    })
    void onlySomebodyWhoOpensThePageIsAView(
            String who, String method, long views, String agent, String header, String value) {
        assertThat(views(method, agent, header, value)).as(who).isEqualTo(views);
    }

    @Test
    void theSecondTimeInADayIsNoOther() {
        assertThat(views("GET", "Twice/1")).isEqualTo(1);
        assertThat(views("GET", "Twice/1")).isZero();
    }

    @Test
    void whereTheSiteCountsNothingNothingIsCounted() {
        long before = counted(VisitKind.COURSE) + counted(VisitKind.SIGN_IN);
        counting = false;
        try {
            assertThat(views("GET", "Off/1")).isZero();
            post("/sitting", "Off/1");
            post("/in", "Off/1");
            assertThat(counted(VisitKind.COURSE) + counted(VisitKind.SIGN_IN)).isEqualTo(before);
        } finally {
            counting = true;
        }
        post("/sitting", "Off/1");
        post("/in", "Off/1");
        assertThat(counted(VisitKind.COURSE) + counted(VisitKind.SIGN_IN))
                .as("the same two are seen where it counts")
                .isEqualTo(before + 2);
    }

    /** W3C Beacon sends it as a form; SameOrigin refuses what another site makes a browser send. */
    @Test
    void aSittingIsTakenFromOurOwnPagesOnly() {
        long before = counted(VisitKind.COURSE);
        assertThat(stage.request()
                        .header("Origin", "https://elsewhere.example")
                        .header("User-Agent", "Sits/1")
                        .post("/sitting")
                        .statusCode())
                .isEqualTo(403);
        stage.request()
                .header("Origin", "http://localhost:8420")
                .header("User-Agent", "Sits/1")
                .header("Sec-GPC", "1")
                .post("/sitting");
        assertThat(counted(VisitKind.COURSE)).isEqualTo(before);
        post("/sitting", "Sits/1");
        assertThat(counted(VisitKind.COURSE)).as("and from there it is seen").isEqualTo(before + 1);
    }

    private void post(String path, String agent) {
        stage.request()
                .header("Origin", "http://localhost:8420")
                .header("User-Agent", agent)
                .post(path);
    }
}
