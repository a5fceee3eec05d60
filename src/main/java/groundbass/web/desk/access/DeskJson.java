package groundbass.web.desk.access;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import io.javalin.http.Context;

/** Answers for the desk's own scripts. */
public final class DeskJson {
    private static final ObjectMapper JSON = JsonMapper.builder().build();

    private DeskJson() {}

    public static void send(Context ctx, Record answer) {
        ctx.header("Cache-Control", "no-store");
        ctx.contentType("application/json").result(write(answer));
    }

    public static byte[] write(Record answer) {
        try {
            return JSON.writeValueAsBytes(answer);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("plain records can be written", e);
        }
    }
}
