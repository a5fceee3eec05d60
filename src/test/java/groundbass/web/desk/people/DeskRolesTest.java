package groundbass.web.desk.people;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.Parts;
import groundbass.audience.colleague.Offer;
import groundbass.audience.download.DownloadToken;
import groundbass.audience.download.Downloads;
import groundbass.audience.download.FileRequest;
import groundbass.audience.download.ReleasedFile;
import groundbass.audience.download.Requester;
import groundbass.audience.download.VisitorKey;
import groundbass.audience.student.Person;
import groundbass.audience.student.StudentId;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.SeriesForm;
import groundbass.catalog.series.SeriesPart;
import groundbass.catalog.upload.Picture;
import groundbass.catalog.upload.Upload;
import groundbass.document.EpisodeDocument;
import groundbass.document.Level;
import groundbass.document.LineSource;
import groundbass.post.EmailAddress;
import groundbass.post.Mail;
import groundbass.post.Outbox;
import groundbass.release.BuildSpec;
import groundbass.release.FileRole;
import groundbass.store.BlobFolder;
import groundbass.store.Instants;
import groundbass.store.RandomId;
import groundbass.web.Site;
import groundbass.web.desk.Sent;
import groundbass.web.shell.Routes;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Who may do what at the desk: every route there is, asked by everybody there is, against the table in
 * {@code roles.txt}. A route that is new needs a row there. Ours, all of it.
 */
class DeskRolesTest {
    private static final HttpClient CLIENT = HttpClient.newHttpClient();
    private static final Pattern PLACE = Pattern.compile("\\{(\\w+)}");

    static Company company;
    static Map<String, Optional<Supplier<Person>>> people;
    static Map<String, Supplier<String>> places;
    static Map<String, String> signedIn = new HashMap<>();
    static String table;

    @BeforeAll
    static void open() {
        company = new Company();
        var other = company.educator("Stan Stranger", "stan@trial.example", true);
        Company.done(company.catalog.create(other, new SeriesForm("High Tide", "", "", "Europe/Vienna")));
        var ended = company.educator("Enno Ended", "enno@trial.example", false);
        company.share(ended, SeriesPart.EDITOR);
        company.end(ended);
        var student = student();
        people = new LinkedHashMap<>();
        people.put("nobody", Optional.empty());
        people.put("student", Optional.of(() -> new Person.OfStudent(student)));
        desk("figures", company.figures);
        desk("editor", company.editor);
        desk("owner", company.owner);
        desk("stranger", other);
        desk("ended", ended);
        desk("keeper", company.keeper);
        places = places(lesson(), student);
        table = text("roles.txt");
    }

    private static void desk(String name, EducatorId who) {
        people.put(name, Optional.of(() -> new Person.OfEducator(who)));
    }

    @AfterAll
    static void close() {
        company.close();
    }

    /** Out, so that its figures are there, and without a line, so that nothing is built of it. */
    private static Episode lesson() {
        var lesson = company.episode("Rope Ladder");
        Company.done(company.writing.saveDraft(
                company.owner,
                lesson.id(),
                0,
                EpisodeDocument.titled("Rope Ladder", Level.BEGINNER)
                        .edit()
                        .exercises(List.of(new LineSource("Slowly", "")))
                        .done()));
        Company.done(company.writing.keep(company.owner, lesson.id(), "first"));
        company.jdbi.useTransaction(
                handle -> new Episodes(company.jdbi).markPublished(handle, lesson.id(), Site.START));
        return lesson;
    }

    private static Upload recording(Episode lesson) {
        var parts = Parts.over(company.jdbi, company.site.clock());
        try {
            var blobs = new BlobFolder(company.site.data().resolve("files"), company.site.clock());
            var sent = Company.done(parts.uploads(blobs)
                    .accept(company.owner, lesson.id(), "clicks.wav", new ByteArrayInputStream(Sent.wav())));
            parts.recordings(blobs).listen(); // its bars are found in what was heard
            return sent;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Picture picture(Episode lesson) {
        var parts = Parts.over(company.jdbi, company.site.clock());
        var png = new ByteArrayOutputStream();
        try {
            ImageIO.write(new BufferedImage(4, 4, BufferedImage.TYPE_INT_RGB), "png", png);
            var blobs = new BlobFolder(company.site.data().resolve("files"), company.site.clock());
            return Company.done(parts.uploads(blobs)
                    .pictures()
                    .accept(company.owner, lesson.id(), "hand.png", "A hand", png.toByteArray()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Never built; two files are there all the same. */
    private static String release(Episode lesson, Upload file) {
        var parts = Parts.over(company.jdbi, company.site.clock());
        var revision = parts.revisions().latest(lesson.id()).orElseThrow().id();
        var spec = new BuildSpec(
                revision, 1, "Low Tide", 1, "low-tide", "http://localhost/e/1", LocalDate.EPOCH, BuildSpec.RENDERERS);
        var release = company.jdbi.inTransaction(
                handle -> parts.releases().trials().create(handle, lesson.id(), spec, Site.START));
        company.jdbi.useHandle(handle -> Map.of("sheet.pdf", FileRole.SHEET, "stem.wav", FileRole.STEM)
                .forEach((name, role) -> handle.execute(
                        "insert into release_file (release_id, place, name, role, media_type, byte_count, sha256)"
                                + " values (?, 1, ?, ?, 'audio/wav', ?, ?)",
                        release.value(),
                        name,
                        role.value(),
                        file.blob().length(),
                        file.blob().sha256().hex())));
        company.jdbi.useHandle(handle -> handle.execute("update release set state = 'overtaken'"));
        return release.value();
    }

    /** Somebody took it, so that the student is among those who did. */
    private static void take(Episode lesson, StudentId student) {
        var clock = company.site.clock();
        try (var downloads =
                new Downloads(company.jdbi, DownloadToken.of(company.jdbi), new VisitorKey(clock), clock)) {
            var file = new ReleasedFile("release000000001", lesson.id(), "sheet.pdf", 10);
            downloads.begin(new FileRequest(file, new Requester.Known(student), true, Optional.empty()));
        }
    }

    private static String thrownAway() {
        var draft = company.episode("Thrown away");
        company.jdbi.useTransaction(handle -> new Episodes(company.jdbi).throwAway(handle, draft.id(), Site.START));
        return draft.id().value();
    }

    private static String letter() {
        var to = new EmailAddress("learner@example.org");
        return new Outbox(company.jdbi, company.site.clock())
                .put(Mail.of(to, "Hello", "Hello.", company.site.clock().instant()))
                .value();
    }

    private static StudentId student() {
        var id = StudentId.next();
        company.jdbi.useHandle(handle -> handle.execute(
                "insert into student (id, email, locale, created_at) values (?, ?, 'en', ?)",
                id.value(),
                "learner@example.org",
                Instants.toColumn(Site.START)));
        return id;
    }

    /** What stands for {@code {...}} in the address of a route; of what is not here, something that nobody has. */
    private static Map<String, Supplier<String>> places(Episode lesson, StudentId student) {
        // a new one for each request, since each answer ends it
        Supplier<String> invited = () -> company.invitations
                .invite(
                        company.owner,
                        new Offer.InSeries(company.series.id(), SeriesPart.EDITOR),
                        new EmailAddress("edgar@trial.example"),
                        Optional.empty())
                .invitation()
                .id();
        take(lesson, student);
        var recording = recording(lesson);
        String release = release(lesson, recording);
        return Map.ofEntries(
                Map.entry("episodes", lesson.id()::value),
                Map.entry("upload", recording.id()::value),
                Map.entry("recording", () -> recording(lesson).id().value()), // each is taken out
                Map.entry("picture", () -> picture(lesson).id().value()),
                Map.entry("release", () -> release),
                Map.entry("files", () -> "sheet.pdf"),
                Map.entry("play", () -> "stem.wav"),
                Map.entry("series", company.series.id()::value),
                Map.entry("students", student::value),
                Map.entry("invitation", invited),
                Map.entry("thrown", DeskRolesTest::thrownAway),
                Map.entry("outbox", DeskRolesTest::letter));
    }

    private static boolean isOfTheDesk(Routes.Route route) {
        return route.path().startsWith("/desk") || route.path().startsWith("/preview/");
    }

    private static String name(Routes.Route route) {
        return route.method().name() + " " + route.path();
    }

    private static List<Routes.Route> routes() {
        return company.site.groundbass().routes().stream()
                .filter(DeskRolesTest::isOfTheDesk)
                .toList();
    }

    /** The rows of a part of the table, by their first words. */
    private static Map<String, List<String>> rows(String part) {
        var rows = new LinkedHashMap<String, List<String>>();
        String text = table.substring(table.indexOf("== " + part + "\n") + part.length() + 4);
        text.substring(0, text.contains("\n== ") ? text.indexOf("\n== ") : text.length())
                .lines()
                .filter(line -> !line.isBlank() && !line.startsWith("#"))
                .map(line -> line.strip().split("\\s*:\\s*", 2))
                .forEach(row -> rows.put(row[0].replaceAll("\\s+", " "), List.of(row[1].split("\\s+"))));
        return rows;
    }

    @Test
    void everyRouteHasARowAndEveryRowARoute() {
        var here = routes().stream().map(DeskRolesTest::name).collect(Collectors.toCollection(TreeSet::new));
        assertThat(here).hasSizeGreaterThan(150);
        assertThat(new TreeSet<>(rows("routes").keySet())).isEqualTo(here);
        assertThat(rows("rules").get("person")).isEqualTo(List.copyOf(people.keySet()));
    }

    @Test
    void everybodyGetsTheAnswerOfTheTable() {
        var rules = rows("rules");
        var wrong = new ArrayList<String>();
        rows("routes").forEach((route, rule) -> {
            var expected = rules.get(rule.get(0));
            var form = rule.subList(1, rule.size());
            var answers = people.keySet().stream()
                    .map(person -> answer(route, form, person))
                    .toList();
            if (!answers.equals(expected)) {
                wrong.add(route + ": " + rule.get(0) + " is " + expected + " and was " + answers);
            }
            goOn(route);
        });
        assertThat(wrong).isEmpty();
    }

    private static String answer(String route, List<String> form, String person) {
        String[] parts = route.split(" ", 2);
        String body = form.stream().map(DeskRolesTest::address).collect(Collectors.joining("&"));
        var request = HttpRequest.newBuilder(URI.create(company.site.address() + address(parts[1])))
                .method(parts[0], HttpRequest.BodyPublishers.ofString(body))
                .header("Content-Type", "application/x-www-form-urlencoded")
                .header("Sec-Fetch-Site", "same-origin");
        people.get(person)
                .ifPresent(one -> request.header(
                        "Cookie",
                        "session="
                                + signedIn.computeIfAbsent(
                                        person,
                                        name -> company.site.signedIn(one.get()).getValue())));
        try {
            return answer(CLIENT.send(request.build(), HttpResponse.BodyHandlers.discarding()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            throw new AssertionError(e);
        }
    }

    private static String answer(HttpResponse<Void> answer) {
        return switch (answer.statusCode()) {
            case 401 -> "sign-in";
            case 403 -> "refused";
            case 404 -> "missing";
            case 410 -> "over";
            default -> answer.statusCode() < 500 ? "in" : String.valueOf(answer.statusCode());
        };
    }

    /** Sessions that an answer may have ended are opened anew, and nobody remembers tries at a secret. */
    private static void goOn(String route) {
        if (route.matches("POST .*(sessions|sign-out|account|sign-in|set-up|reset|invitation).*")) {
            signedIn.clear();
            company.site.clock().advance(Duration.ofMinutes(16));
        }
    }

    /** An address with what it names: the kind of {@code {id}} and {@code {name}} stands before it. */
    private static String address(String path) {
        Matcher matcher = PLACE.matcher(path);
        var address = new StringBuilder();
        while (matcher.find()) {
            String kind = kind(path.substring(0, matcher.start()), matcher.group(1));
            matcher.appendReplacement(
                    address,
                    Matcher.quoteReplacement(
                            places.getOrDefault(kind, () -> otherwise(kind)).get()));
        }
        return matcher.appendTail(address).toString();
    }

    private static String kind(String before, String name) {
        return List.of("id", "name").contains(name) ? before.replaceAll(".*/(\\w+)/$", "$1") : name;
    }

    private static String otherwise(String kind) {
        return kind.equals("number") || kind.equals("place") ? "1" : RandomId.next();
    }

    private static String text(String name) {
        try (var in = DeskRolesTest.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
