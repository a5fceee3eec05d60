package groundbass.release;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import groundbass.catalog.episode.RevisionId;
import groundbass.document.HouseStyle;
import groundbass.document.SheetAbbreviations;
import groundbass.document.SheetLetters;
import groundbass.document.SheetPaper;
import java.time.LocalDate;

/** Recipes as JSON text. */
final class RecipeJson {
    private static final ObjectMapper JSON = JsonMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
            .build();

    private RecipeJson() {}

    static String write(Recipe recipe) {
        ObjectNode node = JSON.createObjectNode();
        node.put("revision", recipe.revision().value());
        node.put("release", recipe.release());
        node.put("series", recipe.series());
        node.put("episodeNumber", recipe.episodeNumber());
        node.put("fileStem", recipe.fileStem());
        node.put("episodeAddress", recipe.episodeAddress());
        node.put("date", recipe.date().toString());
        putUnlessUsual(node, "letters", recipe.style().letters().toString());
        putUnlessUsual(node, "abbreviations", recipe.style().abbreviations().toString());
        if (recipe.style().paper() != HouseStyle.USUAL.paper()) {
            node.put("paper", recipe.style().paper().toString());
        }
        node.put("renderers", recipe.renderers());
        return node.toString();
    }

    private static void putUnlessUsual(ObjectNode node, String name, String text) {
        if (!text.isEmpty()) {
            node.put(name, text);
        }
    }

    static Recipe read(String text) {
        try {
            var node = JSON.readTree(text);
            return new Recipe(
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
                            SheetPaper.parse(node.path("paper").asText(""))),
                    node.required("renderers").asInt());
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a recipe that this program wrote can be read", e);
        }
    }
}
