package groundbass.web.program;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SpecVersion.VersionFlag;
import groundbass.web.shell.Routes;
import io.javalin.Javalin;
import io.javalin.http.HandlerType;
import java.io.IOException;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What is served as the description is one (OpenAPI 3.1), and describes every route of the interface and no other. */
class ProgramDescriptionTest {
    private static final Pattern PARAMETER = Pattern.compile("\\{(\\w+)}");

    private final Description description = new Description();

    /** The routes as they are entered; no service is asked for that. */
    private static Set<String> routes() {
        var entry = new ProgramPages.Entry(null, null, null, null, null, null, null, null);
        var services =
                new ProgramPages.Services(null, null, null, null, null, null, null, null, null, null, null, null, null);
        var javalin = Javalin.create(config -> {
            var routes = new Routes(config.routes);
            ProgramPages.of(entry, services).forEach(group -> group.addTo(routes));
        });
        return javalin.unsafe.internalRouter.allHttpHandlers().stream()
                .map(parsed -> parsed.endpoint)
                .filter(route -> !route.method.equals(HandlerType.HEAD)) // each GET has one, as the description says
                .map(route -> route.method.name().toLowerCase(Locale.ROOT) + " " + route.path)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void everyRouteIsDescribedAndEachDescribedOneIsThere() {
        var described = description.operations().stream()
                .map(Description.Operation::toString)
                .collect(Collectors.toCollection(TreeSet::new));
        assertThat(described).hasSizeGreaterThan(20);
        assertThat(described).isEqualTo(routes());
    }

    /** By the schema that the OpenAPI Initiative publishes for 3.1 (2022-10-07), as a library carries it. */
    @Test
    void itIsADescription() throws IOException {
        var mapper = new ObjectMapper();
        try (var in = getClass().getResourceAsStream("/spec.openapis.org/oas/3.1/schema/2022-10-07")) {
            var schema = JsonSchemaFactory.getInstance(VersionFlag.V202012).getSchema(mapper.readTree(in));
            assertThat(schema.validate(description.document)).isEmpty();
            assertThat(schema.validate(mapper.readTree("{\"openapi\":\"3.1.0\",\"paths\":{}}")))
                    .as("the schema notices what is wrong")
                    .isNotEmpty();
        }
    }

    /** JSON Schema 2020-12, the dialect of OpenAPI 3.1 (section 4.8.24). */
    @Test
    void itsSchemasAreSchemas() {
        var meta = JsonSchemaFactory.getInstance(VersionFlag.V202012)
                .getSchema(SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
        var schemas = description.document.at("/components/schemas");
        assertThat(schemas.size()).isGreaterThan(10);
        schemas.forEach(schema -> assertThat(meta.validate(schema)).isEmpty());
    }

    @Test
    void everyReferenceLeadsSomewhereAndEveryComponentIsUsed() {
        var used = Description.all(description.document)
                .filter(node -> node.has("$ref"))
                .map(node -> node.get("$ref").asText())
                .collect(Collectors.toSet());
        assertThat(used).allSatisfy(reference -> assertThat(
                        description.document.at(reference.substring(1)).isMissingNode())
                .as(reference)
                .isFalse());
        var there = new TreeSet<String>();
        for (String kind : Set.of("parameters", "responses", "schemas")) {
            description
                    .document
                    .at("/components/" + kind)
                    .fieldNames()
                    .forEachRemaining(name -> there.add("#/components/" + kind + "/" + name));
        }
        assertThat(used).containsExactlyInAnyOrderElementsOf(there);
    }

    @Test
    void theParametersOfAnAddressAreDescribed() {
        for (var operation : description.operations()) {
            var inAddress = PARAMETER
                    .matcher(operation.path())
                    .results()
                    .map(found -> found.group(1))
                    .collect(Collectors.toSet());
            var described = new TreeSet<String>();
            for (JsonNode given : operation.described().path("parameters")) {
                var parameter = description.follow(given);
                if (parameter.path("in").asText().equals("path")) {
                    described.add(parameter.path("name").asText());
                }
            }
            assertThat(described).as(operation.toString()).isEqualTo(inAddress);
        }
    }

    @Test
    void noTwoOperationsHaveOneName() {
        assertThat(description.operations())
                .extracting(
                        operation -> operation.described().path("operationId").asText())
                .doesNotHaveDuplicates();
    }
}
