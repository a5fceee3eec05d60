package groundbass.web.desk.script;

import groundbass.catalog.episode.Episode;
import groundbass.document.EpisodeDocument;
import groundbass.script.Proofreading;
import groundbass.text.Utf8;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.desk.room.RoomForm;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.util.function.UnaryOperator;

/**
 * A script and the chapters of a video, as typed or sent.
 *
 * @param problem the key of what kept a file from being read; empty where nothing did
 */
record ScriptForm(String script, String chapters, String problem) implements RoomForm {
    /** Bytes of a file that are looked at. */
    private static final int LARGEST_FILE = 1_000_000;

    static ScriptForm of(EpisodeDocument document) {
        return new ScriptForm(document.script(), document.facts().chapters(), "");
    }

    /** Where a file comes along, its text stands for what was typed. */
    static ScriptForm read(Context ctx) {
        var typed = new ScriptForm(
                tidy(FormParameters.text(ctx, "script")), tidy(FormParameters.text(ctx, "chapters")), "");
        boolean parts = ctx.contentType() != null && ctx.contentType().startsWith("multipart/");
        var file = parts ? ctx.uploadedFile("file") : null;
        if (file == null || file.size() == 0) {
            return typed;
        }
        try (var in = file.content()) {
            return typed.withFile(in.readNBytes(LARGEST_FILE + 1));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private ScriptForm withFile(byte[] bytes) {
        if (bytes.length > LARGEST_FILE) {
            return new ScriptForm(script, chapters, "desk.script.problem.large");
        }
        for (byte one : bytes) {
            if (one == 0) {
                return new ScriptForm(script, chapters, "desk.script.problem.binary");
            }
        }
        return new ScriptForm(tidy(text(bytes)), chapters, "");
    }

    /** UTF-8, or where it is none, the western encoding that old caption editors write. */
    private static String text(byte[] bytes) {
        return Utf8.read(bytes).orElseGet(() -> new String(bytes, Charset.forName("windows-1252")));
    }

    private static String tidy(String text) {
        return text.replace("\r\n", "\n").replace('\r', '\n');
    }

    /** Whether it may be stored. */
    boolean isKept() {
        return problem.isEmpty() && !isTooLong();
    }

    boolean isTooLong() {
        return script.length() > Proofreading.LONGEST || chapters.length() > Proofreading.LONGEST / 10;
    }

    @Override
    public UnaryOperator<EpisodeDocument> change(Episode episode) {
        return this::in;
    }

    EpisodeDocument in(EpisodeDocument before) {
        return before.edit()
                .script(script)
                .facts(before.facts().withChapters(chapters))
                .done();
    }
}
