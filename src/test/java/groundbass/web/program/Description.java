package groundbass.web.program;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaValidatorsConfig;
import com.networknt.schema.SpecVersion.VersionFlag;
import io.restassured.filter.Filter;
import io.restassured.filter.FilterContext;
import io.restassured.response.Response;
import io.restassured.specification.FilterableRequestSpecification;
import io.restassured.specification.FilterableResponseSpecification;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentSkipListSet;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;

/**
 * The description of the interface, and a filter that holds every answer against it: that the operation is described, with
 * this status, this media type, and a body as its schema says (OpenAPI 3.1.0, sections 4.8.9 to 4.8.17).
 */
final class Description implements Filter {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Path FILE = Path.of("src/main/resources/groundbass/web/program/openapi.json");
    private static final Set<String> METHODS = Set.of("get", "put", "post", "delete", "patch");
    private static final String NONE = "\\{\\w+}";

    final JsonNode document;

    /** What was asked so far and how it was answered: {@code get /api/v1/series 200}. */
    final Set<String> seen = new ConcurrentSkipListSet<>();

    Description() {
        try {
            document = JSON.readTree(Files.readString(FILE));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** @param method in small letters */
    record Operation(String method, String path, JsonNode described) {
        /** The scope that it needs; empty where any token does, or none is needed. */
        Optional<String> scope() {
            var scopes = described.path("security").path(0).path("token");
            return scopes.isEmpty()
                    ? Optional.empty()
                    : Optional.of(scopes.get(0).asText());
        }

        boolean isOpen() {
            return described.path("security").isEmpty();
        }

        @Override
        public String toString() {
            return method + " " + path;
        }
    }

    List<Operation> operations() {
        return document.path("paths").properties().stream()
                .flatMap(path -> path.getValue().properties().stream()
                        .filter(method -> METHODS.contains(method.getKey()))
                        .map(method -> new Operation(method.getKey(), path.getKey(), method.getValue())))
                .toList();
    }

    /** What a reference leads to, or the node itself. */
    JsonNode follow(JsonNode node) {
        return node.has("$ref") ? document.at(node.get("$ref").asText().substring(1)) : node;
    }

    @Override
    public Response filter(
            FilterableRequestSpecification request, FilterableResponseSpecification wanted, FilterContext context) {
        var response = context.next(request, wanted);
        String method = request.getMethod().toLowerCase(Locale.ROOT);
        check(
                method.equals("head") ? "get" : method,
                URI.create(request.getURI()).getPath(),
                response);
        checkMembers(String.valueOf(request.<Object>getBody()), response);
        return response;
    }

    /** Every member that is told of is one that can be sent, or one that was sent and is none. */
    private void checkMembers(String sent, Response response) {
        if (response.contentType() == null || !response.contentType().contains("json")) {
            return;
        }
        for (var told : all(read(response.asString()))
                .map(node -> node.path("member"))
                .filter(JsonNode::isTextual)
                .toList()) {
            String name = told.asText().replaceAll("\\[\\d+]", "");
            String last = name.substring(name.lastIndexOf('.') + 1);
            assertThat(members().contains(name) || sent.contains('"' + last + '"'))
                    .as("member " + told)
                    .isTrue();
        }
    }

    private static JsonNode read(String json) {
        try {
            return JSON.readTree(json);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What the objects that are sent have, as in {@code rights.clearance} and {@code exercises.line}. */
    private Set<String> members() {
        var names = new TreeSet<String>();
        for (String schema : List.of("Draft", "LessonBegun", "Hour", "Reason", "ReleaseWish")) {
            addMembers("", document.at("/components/schemas/" + schema), names);
        }
        return names;
    }

    private void addMembers(String before, JsonNode schema, Set<String> names) {
        for (var member : follow(schema).path("properties").properties()) {
            names.add(before + member.getKey());
            addMembers(before + member.getKey() + ".", member.getValue(), names);
            addMembers(before + member.getKey() + ".", member.getValue().path("items"), names);
        }
    }

    private void check(String method, String path, Response response) {
        var operation = operations().stream()
                .filter(one ->
                        one.method().equals(method) && path.matches(one.path().replaceAll(NONE, "[^/]+")))
                .findFirst();
        String said = method + " " + path + " " + response.statusCode() + " " + response.asString();
        if (operation.isEmpty()) {
            assertThat(response.statusCode()).as(said).isIn(404, 405);
            assertThat(response.contentType()).startsWith("application/problem+json");
            return;
        }
        seen.add(operation.get() + " " + response.statusCode());
        var described = operation.get().described().path("responses").path(String.valueOf(response.statusCode()));
        assertThat(described.isMissingNode()).as("not described: " + said).isFalse();
        checkBody(follow(described), response, said);
    }

    private void checkBody(JsonNode described, Response response, String said) {
        for (var header : described.path("headers").properties()) {
            boolean needed = !header.getKey().equals("Link");
            assertThat(!needed || response.header(header.getKey()) != null)
                    .as(header.getKey() + " of " + said)
                    .isTrue();
        }
        var content = described.path("content");
        if (content.isMissingNode()) {
            assertThat(response.asByteArray()).as(said).isEmpty();
            return;
        }
        if (content.has("*/*") || response.asByteArray().length == 0) {
            return; // a file, or the answer to HEAD
        }
        String type = response.contentType().replaceFirst(";.*", "");
        assertThat(content.has(type)).as(type + " of " + said).isTrue();
        if (type.endsWith("json")) {
            assertThat(problems(content.path(type).path("schema"), response.asString()))
                    .as(said)
                    .isEmpty();
        }
        if (type.equals("application/problem+json")) {
            // RFC 9457 section 3.1.2: the member is the status of the answer
            assertThat(response.jsonPath().getInt("status")).isEqualTo(response.statusCode());
        }
    }

    /** What is wrong with a body, by a validator of others. */
    private Set<String> problems(JsonNode schema, String body) {
        ObjectNode whole = schema.deepCopy();
        whole.set("components", document.path("components"));
        var config =
                SchemaValidatorsConfig.builder().formatAssertionsEnabled(true).build();
        var found = JsonSchemaFactory.getInstance(VersionFlag.V202012)
                .getSchema(whole, config)
                .validate(body, InputFormat.JSON);
        var told = new TreeSet<String>();
        found.forEach(message -> told.add(message.toString()));
        return told;
    }

    /** Every node below this one, and itself. */
    static Stream<JsonNode> all(JsonNode node) {
        return Stream.concat(
                Stream.of(node), StreamSupport.stream(node.spliterator(), false).flatMap(Description::all));
    }
}
