package groundbass.web.shell;

import groundbass.audience.student.Device;
import io.javalin.http.Context;
import java.util.Optional;

/** What kind of thing a request comes from. */
public final class Devices {
    private Devices() {}

    public static Device of(Context ctx) {
        return Device.of(Optional.ofNullable(ctx.userAgent()).orElse(""));
    }
}
