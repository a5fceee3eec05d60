package groundbass.release;

import groundbass.document.EpisodeDocument;
import groundbass.text.Messages;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** The README.txt of a bundle: what is what, credits, rights, cautions. Plain text, lines of at most 76 characters. */
final class BundleReadMe {
    static final String NAME = "README.txt";

    private static final int WIDTH = 76;

    private final Messages messages;
    private final List<String> lines = new ArrayList<>();

    private BundleReadMe(Messages messages) {
        this.messages = messages;
    }

    static Artifact of(
            EpisodeDocument document,
            BuildSpec spec,
            List<ReleaseFile> bundled,
            List<ReleaseFile> left,
            Messages messages) {
        var text = new BundleReadMe(messages);
        text.head(document, spec);
        text.files(spec, bundled);
        left.forEach(text::left);
        if (spec.has(Feature.TRACKS_ON_REQUEST)) {
            text.onRequest();
        }
        text.rights(document);
        text.cautions("hands");
        text.cautions("hearing");
        return new Artifact(NAME, FileRole.READ_ME, "text/plain; charset=utf-8", text.bytes());
    }

    private void head(EpisodeDocument document, BuildSpec spec) {
        lines.add(document.title());
        lines.add(messages.say("release.readme.of", spec.series(), spec.episodeNumber()));
        lines.add(messages.say(
                "release.readme.release", spec.release(), spec.date().toString()));
        lines.add(spec.episodeAddress());
    }

    private void files(BuildSpec spec, List<ReleaseFile> files) {
        heading("release.readme.files");
        for (var file : files) {
            lines.add("  " + Bundle.path(spec, file));
            wrap("      ", "      ", what(file));
        }
    }

    private String what(ReleaseFile file) {
        String form = file.form();
        return PracticeTrack.of(file)
                .map(track -> track.title(messages))
                .or(() -> file.exercise().stream()
                        .mapToObj(number -> messages.say("release.exercise." + form, number))
                        .findFirst())
                .orElseGet(() -> messages.say("release.role." + form));
    }

    private void left(ReleaseFile file) {
        wrap("  ", "  ", messages.say("release.readme.left", file.name()));
    }

    private void onRequest() {
        lines.add("");
        String tempos = messages.say("release.readme.request", WantedTrack.SLOWEST, WantedTrack.FASTEST);
        wrap("", "", tempos);
    }

    private void rights(EpisodeDocument document) {
        heading("release.readme.rights");
        var rights = document.rights();
        List.of(rights.composer(), rights.credit(), rights.statement()).stream()
                .filter(text -> !text.isBlank())
                .forEach(text -> wrap("", "", text));
        wrap("", "", messages.say("release.readme.yours"));
        wrap("", "", messages.say("cautions.rights.4"));
    }

    private void cautions(String part) {
        heading("cautions." + part);
        IntStream.iterate(1, number -> messages.has("cautions." + part + "." + number), number -> number + 1)
                .mapToObj(number -> messages.say("cautions." + part + "." + number))
                .forEach(text -> wrap("- ", "  ", text));
    }

    private void heading(String key) {
        String heading = messages.say(key);
        lines.add("");
        lines.add(heading);
        lines.add("-".repeat(heading.length()));
    }

    private void wrap(String first, String others, String text) {
        var line = new StringBuilder(first);
        boolean empty = true;
        for (String word : text.strip().split("\\s+")) {
            if (!empty && line.length() + 1 + word.length() > WIDTH) {
                lines.add(line.toString());
                line = new StringBuilder(others);
                empty = true;
            }
            line.append(empty ? "" : " ").append(word);
            empty = false;
        }
        lines.add(line.toString());
    }

    /** Lines end as on every system that a student may have: carriage return, line feed. */
    private byte[] bytes() {
        return (String.join("\r\n", lines) + "\r\n").getBytes(StandardCharsets.UTF_8);
    }
}
