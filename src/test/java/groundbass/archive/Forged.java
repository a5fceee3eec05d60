package groundbass.archive;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import groundbass.identity.Sha256;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/** An archive that somebody changes, with or without making its lists agree. */
final class Forged {
    private static final ObjectMapper JSON = new ObjectMapper();

    final Map<String, byte[]> files = new LinkedHashMap<>();

    Forged(byte[] archive) throws IOException {
        try (var zip = new ZipInputStream(new ByteArrayInputStream(archive))) {
            for (var entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                files.put(entry.getName(), zip.readAllBytes());
            }
        }
    }

    /** The first file whose name ends so. */
    String named(String ending) {
        return files.keySet().stream()
                .filter(name -> name.endsWith(ending))
                .findFirst()
                .orElseThrow();
    }

    String text(String name) {
        return new String(files.get(name), StandardCharsets.UTF_8);
    }

    /** Changes a file of a lesson, and what its list and the manifest say of it. */
    Forged agreeing(String name, String text) throws IOException {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        files.put(name, bytes);
        String folder = name.substring(0, name.indexOf('/'));
        return list(folder, list -> note((ArrayNode) list.get("files"), name.substring(folder.length() + 1), bytes));
    }

    /** Changes the list of a lesson, and what the manifest says of it. */
    Forged list(String folder, Consumer<ObjectNode> change) throws IOException {
        String name = folder + "/episode.json";
        var list = (ObjectNode) JSON.readTree(files.get(name));
        change.accept(list);
        files.put(name, JSON.writeValueAsBytes(list));
        var manifest = (ObjectNode) JSON.readTree(files.get("manifest.json"));
        for (var lesson : manifest.get("lessons")) {
            if (lesson.get("folder").asText().equals(folder)) {
                note((ObjectNode) lesson.get("list"), files.get(name));
            }
        }
        files.put("manifest.json", JSON.writeValueAsBytes(manifest));
        return this;
    }

    private static void note(ArrayNode entries, String name, byte[] bytes) {
        for (var entry : entries) {
            if (entry.get("name").asText().equals(name)) {
                note((ObjectNode) entry, bytes);
            }
        }
    }

    private static void note(ObjectNode entry, byte[] bytes) {
        entry.put("size", bytes.length).put("sha256", Sha256.of(bytes).hex());
    }

    Path writeTo(Path file) throws IOException {
        var out = new ByteArrayOutputStream();
        try (var zip = new ZipOutputStream(out)) {
            for (var each : files.entrySet()) {
                zip.putNextEntry(new ZipEntry(each.getKey()));
                zip.write(each.getValue());
                zip.closeEntry();
            }
        }
        return Files.write(file, out.toByteArray());
    }
}
