package groundbass.web.view;

import groundbass.text.Message;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/** What an error page and a problem document say. */
public record ErrorView(int status, Message title, Message detail, Optional<String> faultId) {
    private static final Set<Integer> EXPLAINED =
            Set.of(400, 401, 403, 404, 405, 409, 410, 412, 413, 415, 422, 428, 429, 500, 503);

    public ErrorView {
        Objects.requireNonNull(title);
        Objects.requireNonNull(detail);
        Objects.requireNonNull(faultId);
    }

    public static ErrorView of(int status, Optional<String> faultId) {
        String key = "error." + (EXPLAINED.contains(status) ? status : nearest(status));
        return new ErrorView(status, Message.of(key + ".title"), Message.of(key + ".detail"), faultId);
    }

    private static int nearest(int status) {
        return status < 500 ? 400 : 500;
    }
}
