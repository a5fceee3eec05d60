package groundbass.web.desk.editor;

import groundbass.document.LineSource;
import io.javalin.http.Context;
import java.util.List;
import java.util.stream.IntStream;

/** An exercise as typed. Names and texts come in the order of the page. */
public record ExerciseForm(String name, String text) {
    static List<ExerciseForm> read(Context ctx) {
        var names = ctx.formParams("exerciseName");
        var texts = ctx.formParams("exerciseText");
        return IntStream.range(0, texts.size())
                .mapToObj(i -> new ExerciseForm(i < names.size() ? names.get(i) : "", texts.get(i)))
                .toList();
    }

    static ExerciseForm of(LineSource line) {
        return new ExerciseForm(line.name(), line.text());
    }

    LineSource line() {
        return new LineSource(name.strip(), text);
    }
}
