package groundbass.web.answer;

import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.util.Map;
import java.util.Optional;

/** A way by which a stored file reaches its reader without passing through this program. */
public sealed interface HandOver permits SendfileOffload, SignedAddress {
    /**
     * What is answered in the place of the file.
     *
     * @param describes whether that answer becomes the one with the file, so that it carries what is said of the file
     */
    record Instead(HttpStatus status, Map<String, String> headers, boolean describes) {}

    /** Whether the file comes from another host, which then learns who asks. */
    boolean leadsElsewhere();

    /**
     * @param mediaType of the file, as a header says it
     * @param disposition whether it is saved, and under which name
     * @return empty where this file, or this request, is answered by the program itself
     */
    Optional<Instead> instead(Context ctx, FileBody.Stored file, String mediaType, Optional<String> disposition)
            throws IOException;
}
