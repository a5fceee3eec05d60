package groundbass.web.desk.editor;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.text.Message;
import groundbass.web.desk.calendar.PreflightView;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LessonPartsTest {
    private static final String PATH = "/desk/episodes/e";

    @ParameterizedTest
    @CsvSource({
        "mainLine,        desk.editor.line",
        "title,           desk.editor.lesson",
        "exercises[1],    desk.editor.exercises",
        "notes,           desk.editor.notes",
        "groove,          desk.editor.band",
        "rights.clearance, desk.editor.rights",
        "settings.tempos, desk.editor.files",
        "facts.video,     desk.facts.title",
        "walkthrough,     desk.walkthrough.title",
        "imprint,         desk.publish.title",
        "address,         desk.publish.title"
    })
    void aRemarkIsShownAtThePartWhereItIsMended(String field, String part) {
        assertThat(marked(field, "open")).containsExactly(part);
        assertThat(marked("", "open")).isEmpty();
    }

    @Test
    void whatBlocksIsShownBeforeWhatAsks() {
        var both = new PreflightView(rows("notes"), rows("notes", "groove"), List.of(), "");
        assertThat(looks(both)).containsEntry("desk.editor.notes", "open").containsEntry("desk.editor.band", "look");
    }

    @Test
    void everyPartLeadsSomewhereElse() {
        assertThat(LessonParts.of(PATH, new PreflightView(List.of(), List.of(), List.of(), "")))
                .hasSize(12)
                .extracting(EditorPart::way)
                .doesNotHaveDuplicates()
                .contains("#rights-head", PATH + "/script");
    }

    private static List<String> marked(String field, String look) {
        var preflight = new PreflightView(field.isEmpty() ? List.of() : rows(field), List.of(), List.of(), "");
        return looks(preflight).entrySet().stream()
                .filter(part -> part.getValue().equals(look))
                .map(Map.Entry::getKey)
                .toList();
    }

    private static Map<String, String> looks(PreflightView preflight) {
        return LessonParts.of(PATH, preflight).stream()
                .collect(Collectors.toMap(part -> part.title().key(), EditorPart::look));
    }

    private static List<PreflightView.Row> rows(String... fields) {
        return Arrays.stream(fields)
                .map(field -> new PreflightView.Row(Message.of("desk.save"), field, ""))
                .toList();
    }
}
