package groundbass.web.desk;

import groundbass.catalog.episode.Episode;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;

/** A room of a lesson as it stands open in a window: its fields as they came, to be typed over and sent. */
public final class OpenRoom {
    private static final String FORM = "application/x-www-form-urlencoded; charset=utf-8";

    private final Studio studio;
    private final Document page;
    private final String action;
    private final Map<String, List<String>> fields = new LinkedHashMap<>();

    private OpenRoom(Studio studio, Document page) {
        this.studio = studio;
        this.page = page;
        var form = page.selectFirst("form#room");
        this.action = form.attr("action");
        form.select("[name]").stream().filter(OpenRoom::isSent).forEach(this::take);
    }

    /** @param way below the address of the lesson: {@code notes}, {@code exercises/2} */
    public static OpenRoom of(Studio studio, Episode episode, String way) {
        String path = "/desk/episodes/" + episode.id() + "/" + way;
        return new OpenRoom(studio, Jsoup.parse(studio.browser().get(path).asString()));
    }

    /** The HTML standard, "constructing the entry list": no buttons, nothing that is not ticked, nothing of another form. */
    private static boolean isSent(Element field) {
        boolean ticked = !field.attr("type").equals("checkbox") || field.hasAttr("checked");
        return !field.tagName().equals("button") && !field.attr("type").equals("file") && ticked;
    }

    private void take(Element field) {
        String value =
                switch (field.tagName()) {
                    case "textarea" -> field.wholeText();
                    case "select" -> chosen(field);
                    default -> field.val();
                };
        fields.merge(field.attr("name"), List.of(value), OpenRoom::both);
    }

    private static String chosen(Element select) {
        var chosen = select.selectFirst("option[selected]");
        return (chosen == null ? select.selectFirst("option") : chosen).val();
    }

    private static List<String> both(List<String> some, List<String> more) {
        return Stream.concat(some.stream(), more.stream()).toList();
    }

    /** Types over the fields of that name, in their order. */
    public OpenRoom type(String name, String... values) {
        fields.put(name, Arrays.asList(values));
        return this;
    }

    /** What the first field of that name says. */
    public String said(String name) {
        return all(name).get(0);
    }

    public List<String> all(String name) {
        return fields.get(name);
    }

    public Document page() {
        return page;
    }

    public Response save() {
        return send(studio.form(), "");
    }

    /** By the button that asks for more than to save. */
    public Response press(String then) {
        type("then", then);
        return save();
    }

    /** As the page's script saves while one types. */
    public Response keep() {
        return send(studio.form(), "/draft");
    }

    /** With a request of the test's own: of nobody who is signed in, say. */
    public Response send(RequestSpecification request, String end) {
        request.contentType(FORM);
        fields.forEach((name, values) -> request.formParam(name, values));
        return request.post(action + end);
    }
}
