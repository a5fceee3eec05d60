package groundbass.web.desk;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import io.javalin.http.Context;

/** Answers for the desk's own scripts. */
final class DeskJson {
    private static final ObjectMapper JSON = JsonMapper.builder().build();

    private DeskJson() {}

    static void send(Context ctx, Record answer) {
        ctx.header("Cache-Control", "no-store");
        ctx.contentType("application/json").result(write(answer));
    }

    static byte[] write(Record answer) {
        try {
            return JSON.writeValueAsBytes(answer);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("plain records can be written", e);
        }
    }
}
