package groundbass.catalog.episode;

import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.deser.std.FromStringDeserializer;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.ser.std.ToStringSerializer;
import groundbass.document.EpisodeDocument;
import groundbass.document.Level;
import groundbass.document.UploadId;
import groundbass.identity.Sha256;
import java.util.Map;
import java.util.function.Function;

/**
 * Episode documents as JSON text. What a later program added is passed over in reading; what an earlier one lacked gets
 * its usual value; a form that is newer than this program's is refused, because it could be misread.
 */
final class DocumentJson {
    private static final ObjectMapper JSON = JsonMapper.builder()
            .disable(MapperFeature.AUTO_DETECT_IS_GETTERS)
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .withConfigOverride(
                    String.class, text -> text.setSetterInfo(JsonSetter.Value.forValueNulls(Nulls.AS_EMPTY)))
            .addModule(new SimpleModule()
                    .addSerializer(UploadId.class, ToStringSerializer.instance)
                    .addDeserializer(UploadId.class, new TextReader<>(UploadId.class, UploadId::new))
                    .addSerializer(Sha256.class, ToStringSerializer.instance)
                    .addDeserializer(Sha256.class, new TextReader<>(Sha256.class, Sha256::new)))
            .build();

    private DocumentJson() {}

    /** The same document always gives the same text. */
    public static String write(EpisodeDocument document) {
        try {
            return JSON.writeValueAsString(document);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a document of plain records can be written", e);
        }
    }

    /** @throws IllegalArgumentException where the text is no document, or of a form newer than this program's */
    public static EpisodeDocument read(String text) {
        try {
            if (!(JSON.readTree(text) instanceof ObjectNode given)) {
                throw new IllegalArgumentException("an episode document is a JSON object");
            }
            refuseNewer(given.path("form").asInt());
            ObjectNode whole = JSON.valueToTree(EpisodeDocument.titled("", Level.BEGINNER));
            fill(whole, given);
            return JSON.treeToValue(whole, EpisodeDocument.class);
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("not an episode document: " + e.getOriginalMessage(), e);
        }
    }

    private static void fill(ObjectNode usual, ObjectNode given) {
        for (Map.Entry<String, JsonNode> property : given.properties()) {
            JsonNode value = property.getValue();
            if (value instanceof ObjectNode part && usual.get(property.getKey()) instanceof ObjectNode usualPart) {
                fill(usualPart, part);
            } else if (!value.isNull()) {
                usual.set(property.getKey(), value);
            }
        }
    }

    private static void refuseNewer(int form) {
        if (form > EpisodeDocument.FORM) {
            throw new IllegalArgumentException("written by a later version of this program, in form " + form
                    + "; this one reads up to form " + EpisodeDocument.FORM);
        }
    }

    private static final class TextReader<T> extends FromStringDeserializer<T> {
        private static final long serialVersionUID = 1L;
        private final transient Function<String, T> read;

        TextReader(Class<T> type, Function<String, T> read) {
            super(type);
            this.read = read;
        }

        @Override
        protected T _deserialize(String value, DeserializationContext context) {
            return read.apply(value);
        }
    }
}
