package groundbass.web.desk.recording;

import groundbass.catalog.upload.Upload;
import groundbass.catalog.upload.Uploads;
import groundbass.document.UploadId;
import groundbass.web.answer.FileAnswer;
import groundbass.web.desk.access.DeskContext;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;

/** The recordings that addresses of the desk name, for the educator whose episode they belong to. */
record OwnUploads(DeskContext desk, Uploads uploads) {
    static final String PATH = DeskContext.EPISODE + "/tracks/{upload}";

    /** What {@code {upload}} names among this episode's; another's is not found. */
    Upload named(Context ctx) {
        var episode = desk.episode(ctx);
        return UploadId.parse(ctx.pathParam("upload"))
                .flatMap(uploads::find)
                .filter(upload -> upload.episode().equals(episode.id()))
                .orElseThrow(NotFoundResponse::new);
    }

    /** The bytes as they came, or the part of them that is asked for. */
    void send(Context ctx) throws IOException {
        var upload = named(ctx);
        FileAnswer.of(uploads.files(), upload.blob().sha256(), upload.mediaType())
                .send(ctx);
    }
}
