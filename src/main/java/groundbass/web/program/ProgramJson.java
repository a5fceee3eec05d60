package groundbass.web.program;

import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.cfg.CoercionAction;
import com.fasterxml.jackson.databind.cfg.CoercionInputShape;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.type.LogicalType;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.stream.Collectors;

/** JSON as it comes in and goes out (RFC 8259). What nobody here knows is refused by its name, not passed over. */
final class ProgramJson {
    /** Numbers, texts, brackets and names of one body: far more than an object of the interface has. */
    private static final int MOST_PARTS = 10_000;

    private static final JsonFactory BOUNDED = JsonFactory.builder()
            .streamReadConstraints(
                    StreamReadConstraints.builder().maxTokenCount(MOST_PARTS).build())
            .build();

    private static final ObjectMapper JSON = JsonMapper.builder(BOUNDED)
            .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS)
            .defaultSetterInfo(JsonSetter.Value.forContentNulls(Nulls.FAIL))
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES, DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .withCoercionConfig(
                    LogicalType.Textual, text -> text.setCoercion(CoercionInputShape.Integer, CoercionAction.Fail)
                            .setCoercion(CoercionInputShape.Float, CoercionAction.Fail)
                            .setCoercion(CoercionInputShape.Boolean, CoercionAction.Fail))
            .build();

    private ProgramJson() {}

    static byte[] write(Object value) {
        try {
            return JSON.writeValueAsBytes(value);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("plain values can be written", e);
        }
    }

    static ObjectNode tree(Object value) {
        return JSON.valueToTree(value);
    }

    /** An object; refuses with 400, by line and column, what is none. */
    static ObjectNode object(byte[] body) {
        try {
            if (JSON.readTree(body) instanceof ObjectNode object) {
                refuseWhatIsNoText(object);
                return object;
            }
            throw Refusal.of(HttpStatus.BAD_REQUEST, "program.refused.json.object");
        } catch (StreamConstraintsException e) {
            throw Refusal.of(HttpStatus.BAD_REQUEST, "program.refused.json.many");
        } catch (JsonProcessingException e) {
            var place = e.getLocation();
            throw Refusal.of(
                    HttpStatus.BAD_REQUEST,
                    "program.refused.json",
                    place == null ? 1 : place.getLineNr(),
                    place == null ? 1 : place.getColumnNr());
        } catch (IOException e) {
            throw new UncheckedIOException(e); // the bytes lie in memory
        }
    }

    private static void refuseWhatIsNoText(JsonNode node) {
        node.fieldNames().forEachRemaining(Incoming::demandText);
        if (node.isTextual()) {
            Incoming.demandText(node.textValue());
        }
        node.forEach(ProgramJson::refuseWhatIsNoText);
    }

    /** What an object says; refuses with 422, by its name, a member that is none or says something of another kind. */
    static <T> T read(JsonNode object, Class<T> type) {
        try {
            return JSON.treeToValue(object, type);
        } catch (JsonMappingException e) {
            throw Refusal.member(path(e), "program.refused.member");
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a tree has been read already", e);
        }
    }

    /** As in {@code courses[0].title}. */
    private static String path(JsonMappingException e) {
        return e.getPath().stream()
                .map(step -> step.getFieldName() == null ? "[" + step.getIndex() + "]" : "." + step.getFieldName())
                .collect(Collectors.joining())
                .replaceFirst("^\\.", "");
    }

    /** Changes what a merge patch names (RFC 7396 section 2). */
    static ObjectNode merge(ObjectNode target, ObjectNode patch) {
        for (var member : patch.properties()) {
            if (member.getValue().isNull()) {
                target.remove(member.getKey());
            } else if (member.getValue() instanceof ObjectNode part) {
                var before = target.get(member.getKey()) instanceof ObjectNode known ? known : JSON.createObjectNode();
                target.set(member.getKey(), merge(before, part));
            } else {
                target.set(member.getKey(), member.getValue());
            }
        }
        return target;
    }
}
