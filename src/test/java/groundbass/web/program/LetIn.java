package groundbass.web.program;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.educator.ProgramScope;
import groundbass.catalog.educator.ProgramTokens;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.Episodes;
import groundbass.release.Built;
import groundbass.release.ReleaseId;
import groundbass.release.Releases;
import groundbass.store.BlobFolder;
import groundbass.web.desk.Studio;
import io.restassured.config.EncoderConfig;
import io.restassured.config.RestAssuredConfig;
import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.UUID;

/** Programs of a studio's educators, with the tokens that they were given. */
record LetIn(Studio studio, Description description) {
    /** Media types go out as the test says them, and texts in UTF-8. */
    private static final RestAssuredConfig AS_SAID = RestAssuredConfig.config()
            .encoderConfig(EncoderConfig.encoderConfig()
                    .appendDefaultContentCharsetToContentTypeIfUndefined(false)
                    .defaultContentCharset(StandardCharsets.UTF_8));

    ProgramTokens tokens() {
        var jdbi = studio.site.groundbass().database().jdbi();
        return new ProgramTokens(jdbi, new Audit(jdbi, studio.site.clock()), studio.site.clock());
    }

    String token(EducatorId who, String name, ProgramScope... scopes) {
        return Studio.done(tokens().make(who, name, Set.of(scopes), 90)).value();
    }

    /** The other educator of the studio. */
    EducatorId stranger() {
        var jdbi = studio.site.groundbass().database().jdbi();
        return new Educators(jdbi, new Audit(jdbi, studio.site.clock()), studio.site.clock())
                .withEmail("other@trial.example")
                .orElseThrow()
                .id();
    }

    /** A request as a program sends it; every answer is held against the description. */
    RequestSpecification request(String token) {
        return bare().header("Authorization", "Bearer " + token);
    }

    RequestSpecification bare() {
        return studio.site
                .program()
                .config(AS_SAID)
                .filter(description)
                .accept("*/*")
                .basePath("/api/v1");
    }

    /** Closes the build of a release, whose sheet says no more than its name. */
    void built(String release) {
        var releases = new Releases(studio.site.groundbass().database().jdbi());
        Built.ready(
                releases,
                ReleaseId.parse(release).orElseThrow(),
                studio.site.clock().instant());
        try {
            new BlobFolder(studio.site.data().resolve("files"), studio.site.clock())
                    .put("sheet.pdf".getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Does what the calendar does with a release that is built. */
    void bringOut(String lesson, String release) {
        var jdbi = studio.site.groundbass().database().jdbi();
        var now = studio.site.clock().instant();
        jdbi.useTransaction(handle -> {
            new Releases(jdbi).publish(handle, ReleaseId.parse(release).orElseThrow(), now);
            new Episodes(jdbi).markPublished(handle, EpisodeId.parse(lesson).orElseThrow(), now);
        });
    }

    /** A post that was never sent before. */
    RequestSpecification post(String token) {
        return request(token).contentType("application/json").header("Idempotency-Key", key());
    }

    static String key() {
        return '"' + UUID.randomUUID().toString() + '"';
    }
}
