package groundbass.site;

import groundbass.audience.news.Ask;
import groundbass.audience.news.AskedOn;
import groundbass.catalog.series.Series;
import groundbass.post.EmailAddress;
import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Who comes to the site of a {@link YearRun}: readers every day, robots, students who come and go, strangers at the door. */
final class YearsPeople {
    private static final int READERS = 20;
    /** Each so many of them reads an earlier lesson. */
    private static final int OF_EARLIER = 4;

    private static final int ROBOTS = 3;
    private static final int NEW_STUDENTS = 6;
    private static final int STUDENTS = 30;
    private static final int NEWS_READERS = 15;
    private static final Pattern FILE = Pattern.compile("href=\"(/files/[^\"?]+\\.(?:pdf|mid|mp3|zip))\"");
    private static final Pattern SITTING = Pattern.compile("data-sitting=\"([^\"]+)\"");
    private static final Pattern LINK = Pattern.compile("/sign-in/[A-Za-z0-9_-]{20,}");
    private static final String BROWSER = "Mozilla/5.0 (X11; Linux x86_64; rv:130.0)";

    private final HttpClient http = HttpClient.newHttpClient();
    private final URI site;
    private final Services parts;
    private final Series series;
    /** Cookies of those who have an account, who came first in front. */
    private final Deque<String> students = new ArrayDeque<>();

    private final Map<String, Integer> told = new TreeMap<>();
    private int network;
    private int accounts;

    YearsPeople(URI site, Services parts, Series series) {
        this.site = site;
        this.parts = parts;
        this.series = series;
        for (int i = 0; i < NEWS_READERS; i++) {
            var email = new EmailAddress("news" + i + "@readers.example");
            parts.audience.newsReaders.agree(new Ask(series.id(), email, Locale.ENGLISH, "Yes.", AskedOn.ACCOUNT));
        }
    }

    /** On a day of the week, of which there are seven. Drafts have numbers too, so some ask for a lesson that is not out. */
    void day(int day) throws IOException, InterruptedException {
        int out = parts.episodes.publishedIn(series.id()).size();
        if (out == 0) {
            return;
        }
        for (int i = 0; i < READERS; i++) {
            read(i % OF_EARLIER == 0 ? 1 + i % out : out, BROWSER, "");
        }
        for (int i = 0; i < ROBOTS; i++) {
            read(out, "a robot; bot; crawler", "");
        }
        if (day < NEW_STUDENTS) {
            join();
        }
        for (String cookie : List.copyOf(students).subList(0, students.size() / 3)) {
            read(out, BROWSER, cookie);
        }
        while (students.size() > STUDENTS) {
            String cookie = students.removeFirst();
            if (accounts % 2 == 0) {
                post("/me/delete", "", BROWSER, cookie);
            } // or comes no more, until the account is ended for being idle
        }
        knock();
    }

    /** Opens a lesson, plays it, takes a file. */
    private void read(int lesson, String agent, String cookie) throws IOException, InterruptedException {
        String page =
                get("/series/" + series.slug() + "/" + lesson, agent, cookie).body();
        for (String sitting : all(SITTING, page)) {
            post(sitting.replace("&amp;", "&"), "played=line%2C4%2C1", agent, cookie);
        }
        var files = all(FILE, page);
        if (!files.isEmpty()) {
            get(files.get(network % files.size()), agent, cookie);
        }
        network++;
    }

    private static List<String> all(Pattern pattern, String text) {
        return pattern.matcher(text)
                .results()
                .map(found -> found.group(1))
                .collect(Collectors.toCollection(ArrayList::new));
    }

    private void join() throws IOException, InterruptedException {
        String email = "student" + accounts++ + "@readers.example";
        post("/sign-in", "next=%2F&email=" + URLEncoder.encode(email, StandardCharsets.UTF_8), BROWSER, "");
        var link = LINK.matcher(letter(email));
        if (link.find()) {
            var answer = post(link.group(), "", BROWSER, "");
            answer.headers().allValues("Set-Cookie").stream()
                    .map(cookie -> cookie.substring(0, cookie.indexOf(';')))
                    .filter(cookie -> cookie.contains("session="))
                    .forEach(students::add);
        }
    }

    private String letter(String email) {
        return parts.database.jdbi().withHandle(handle -> handle.createQuery(
                        "select body from outbox where recipient = :email order by created_at desc limit 1")
                .bind("email", email)
                .mapTo(String.class)
                .findOne()
                .orElse(""));
    }

    /** Without a key. */
    private void knock() throws IOException, InterruptedException {
        post("/desk/sign-in", "email=desk%40quay.example&password=guessed-" + network, BROWSER, "");
        post("/sign-in/abcdefghijklmnopqrstuvwxyz", "", BROWSER, "");
        get("/no/such/page/" + network, BROWSER, "");
    }

    private HttpResponse<String> get(String path, String agent, String cookie)
            throws IOException, InterruptedException {
        return send(path, agent, cookie, HttpRequest.newBuilder(site.resolve(path)));
    }

    private HttpResponse<String> post(String path, String form, String agent, String cookie)
            throws IOException, InterruptedException {
        var request = HttpRequest.newBuilder(site.resolve(path))
                .header("Content-Type", "application/x-www-form-urlencoded")
                .header("Sec-Fetch-Site", "same-origin")
                .POST(BodyPublishers.ofString(form));
        return send(path, agent, cookie, request);
    }

    private HttpResponse<String> send(String path, String agent, String cookie, HttpRequest.Builder request)
            throws IOException, InterruptedException {
        request.header(
                        "X-Forwarded-For",
                        "10." + network / 62_500 % 250 + "." + network / 250 % 250 + "." + network % 250)
                .header("Accept", "text/html,*/*;q=0.8")
                .header("User-Agent", agent);
        if (!cookie.isEmpty()) {
            request.header("Cookie", cookie);
        }
        var answer = http.send(request.build(), BodyHandlers.ofString(StandardCharsets.ISO_8859_1));
        told.merge(path.replaceFirst("^(/[^/?]*).*", "$1") + " " + answer.statusCode(), 1, Integer::sum);
        return answer;
    }

    /** What was asked, by its first word, with how it was answered and how often. */
    String told() {
        return "answers: " + told;
    }
}
