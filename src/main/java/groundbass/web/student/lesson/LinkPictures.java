package groundbass.web.student.lesson;

import groundbass.catalog.episode.EpisodeId;
import groundbass.release.ReleaseFile;
import groundbass.store.Blobs;
import groundbass.web.answer.CachedResponse;
import groundbass.web.answer.FileAnswer;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/** The pictures beside links to lessons, at addresses that stay when a lesson is corrected. */
public final class LinkPictures implements PageGroup {
    private final Lessons lessons;
    private final ReleaseContents contents;
    private final Blobs blobs;

    public LinkPictures(Lessons lessons, ReleaseContents contents, Blobs blobs) {
        this.lessons = lessons;
        this.contents = contents;
        this.blobs = blobs;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/e/{id}/" + ReleaseFile.LINK_PICTURE, Role.ANYONE, this::picture);
    }

    static String path(EpisodeId episode) {
        return "/e/" + episode + "/" + ReleaseFile.LINK_PICTURE;
    }

    static Optional<ReleaseFile> in(List<ReleaseFile> files) {
        return files.stream()
                .filter(file -> file.name().equals(ReleaseFile.LINK_PICTURE))
                .findFirst();
    }

    private void picture(Context ctx) throws IOException {
        var file = EpisodeId.parse(ctx.pathParam("id"))
                .flatMap(lessons::release)
                .flatMap(release -> in(contents.files(release.id())))
                .orElseThrow(NotFoundResponse::new);
        // pages of others show it beside the link (WHATWG Fetch, section "Cross-Origin-Resource-Policy header")
        ctx.header("Cross-Origin-Resource-Policy", "cross-origin");
        FileAnswer.of(blobs, file.sha256(), file.mediaType())
                .withCacheControl(CachedResponse.ASK_AGAIN)
                .send(ctx);
    }
}
