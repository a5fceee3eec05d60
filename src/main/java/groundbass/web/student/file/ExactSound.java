package groundbass.web.student.file;

import groundbass.release.Release;
import groundbass.release.request.StemsOnRequest;
import groundbass.release.request.StemsOnRequest.Stem;
import groundbass.web.answer.FileAnswer;
import groundbass.web.shell.limit.Limit;
import groundbass.web.shell.limit.RateLimits;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import java.io.IOException;
import java.util.Optional;

/**
 * What a page plays without loss, for a request whose reader may have the release. Only where it is not here already does
 * it cost the machine seconds: that is done so often for a network, and for no request that only asks about it.
 */
public final class ExactSound {
    private final StemsOnRequest stems;
    private final RateLimits limits;

    public ExactSound(StemsOnRequest stems, RateLimits limits) {
        this.stems = stems;
        this.limits = limits;
    }

    /** @throws groundbass.effort.Busy where it must be made, and too many wait for theirs */
    public Optional<Stem> of(Context ctx, Release release, String name) {
        var here = stems.known(release, name);
        if (here.isPresent() || !ctx.method().equals(HandlerType.GET)) {
            return here;
        }
        limits.demand(ctx, Limit.TRACK);
        return stems.find(release, name);
    }

    public static FileAnswer answer(Stem stem) throws IOException {
        return FileAnswer.of(stem.files(), stem.file().sha256(), stem.file().mediaType());
    }
}
