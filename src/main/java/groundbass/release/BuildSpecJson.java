package groundbass.release;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import groundbass.catalog.episode.RevisionId;
import groundbass.document.HouseStyle;
import groundbass.document.SheetAbbreviations;
import groundbass.document.SheetAids;
import groundbass.document.SheetLetters;
import groundbass.document.SheetPaper;
import groundbass.store.TextColumn;
import java.time.LocalDate;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.spi.JdbiPlugin;

/** Build specifications as JSON text, which is also how they lie in a column. */
public final class BuildSpecJson implements JdbiPlugin {
    private static final ObjectMapper JSON = JsonMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
            .build();

    @Override
    public void customizeJdbi(Jdbi jdbi) {
        TextColumn.register(jdbi, BuildSpec.class, BuildSpecJson::write, BuildSpecJson::read);
    }

    public static String write(BuildSpec spec) {
        ObjectNode node = JSON.createObjectNode();
        node.put("revision", spec.revision().value());
        node.put("release", spec.release());
        node.put("series", spec.series());
        node.put("episodeNumber", spec.episodeNumber());
        node.put("fileStem", spec.fileStem());
        node.put("episodeAddress", spec.episodeAddress());
        node.put("date", spec.date().toString());
        putUnlessUsual(node, "letters", spec.style().letters().toString());
        putUnlessUsual(node, "abbreviations", spec.style().abbreviations().toString());
        if (spec.style().paper() != HouseStyle.USUAL.paper()) {
            node.put("paper", spec.style().paper().toString());
        }
        putUnlessUsual(node, "aids", spec.style().aids().toString());
        node.put("renderers", spec.renderers());
        return node.toString();
    }

    private static void putUnlessUsual(ObjectNode node, String name, String text) {
        if (!text.isEmpty()) {
            node.put(name, text);
        }
    }

    public static BuildSpec read(String text) {
        try {
            var node = JSON.readTree(text);
            return new BuildSpec(
                    new RevisionId(node.required("revision").asText()),
                    node.required("release").asInt(),
                    node.required("series").asText(),
                    node.required("episodeNumber").asInt(),
                    node.required("fileStem").asText(),
                    node.required("episodeAddress").asText(),
                    LocalDate.parse(node.required("date").asText()),
                    new HouseStyle(
                            SheetLetters.parse(node.path("letters").asText("")),
                            SheetAbbreviations.parse(node.path("abbreviations").asText("")),
                            SheetPaper.parse(node.path("paper").asText("")),
                            SheetAids.parse(node.path("aids").asText(""))),
                    node.required("renderers").asInt());
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a build specification that this program wrote can be read", e);
        }
    }
}
