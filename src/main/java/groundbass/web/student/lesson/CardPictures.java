package groundbass.web.student.lesson;

import groundbass.release.ReleaseFile;
import groundbass.release.ReleaseId;
import groundbass.release.Releases;
import groundbass.store.Blobs;
import groundbass.web.answer.CachedResponse;
import groundbass.web.answer.FileAnswer;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.EpisodeCard;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.util.Set;

/** The pictures of lessons in lists. They belong to a release, so that a browser keeps them for good. */
public final class CardPictures implements PageGroup {
    private static final Set<String> NAMES = Set.of(ReleaseFile.CARD_PICTURE, ReleaseFile.CARD_PICTURE_AT_NIGHT);

    private final Lessons lessons;
    private final Releases releases;
    private final Blobs blobs;

    public CardPictures(Lessons lessons, Releases releases, Blobs blobs) {
        this.lessons = lessons;
        this.releases = releases;
        this.blobs = blobs;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/card/{release}/{name}", Role.ANYONE, this::picture);
    }

    static EpisodeCard.Picture of(ReleaseId release) {
        String folder = "/card/" + release + "/";
        return new EpisodeCard.Picture(folder + ReleaseFile.CARD_PICTURE, folder + ReleaseFile.CARD_PICTURE_AT_NIGHT);
    }

    private void picture(Context ctx) throws IOException {
        String name = ctx.pathParam("name");
        var file = ReleaseId.parse(ctx.pathParam("release"))
                .filter(id -> NAMES.contains(name))
                .flatMap(lessons::published)
                .flatMap(release -> releases.files().named(release.id(), name))
                .orElseThrow(NotFoundResponse::new);
        FileAnswer.of(blobs, file.sha256(), file.mediaType())
                .withCacheControl(CachedResponse.FOR_GOOD)
                .send(ctx);
    }
}
