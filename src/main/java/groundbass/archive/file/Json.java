package groundbass.archive.file;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.Arrays;
import java.util.List;

/** The JSON of archives. What a later program adds is passed over; nothing in it is deep or long without bound. */
public final class Json {
    /** The most bytes of one file of JSON. */
    public static final int LONGEST = 1 << 25;

    private static final int DEEPEST = 12;
    private static final int LONGEST_TEXT = 1 << 20;

    private static final ObjectMapper MAPPER = JsonMapper.builder(JsonFactory.builder()
                    .streamReadConstraints(StreamReadConstraints.builder()
                            .maxNestingDepth(DEEPEST)
                            .maxStringLength(LONGEST_TEXT)
                            .maxDocumentLength(LONGEST)
                            .build())
                    .build())
            .enable(SerializationFeature.INDENT_OUTPUT)
            .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .defaultPropertyInclusion(
                    JsonInclude.Value.construct(JsonInclude.Include.NON_NULL, JsonInclude.Include.NON_NULL))
            .build();

    private Json() {}

    public static String write(Object value) {
        try {
            return MAPPER.writeValueAsString(value) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("plain records can be written", e);
        }
    }

    public static JsonNode tree(String text) {
        try {
            return MAPPER.readTree(text);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("what this program wrote can be read", e);
        }
    }

    /** A list none of whose members is missing. */
    public static <T> List<T> list(String text, Class<T[]> type) throws DamagedFile {
        var members = Arrays.asList(read(text, type));
        if (members.contains(null)) {
            throw DamagedFile.of("archive.problem.json");
        }
        return members;
    }

    public static <T> T read(String text, Class<T> type) throws DamagedFile {
        try {
            T read = MAPPER.readValue(text, type);
            if (read == null) {
                throw DamagedFile.of("archive.problem.json");
            }
            return read;
        } catch (JsonProcessingException e) {
            throw DamagedFile.of("archive.problem.json");
        }
    }
}
