package groundbass.release.play;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.UncheckedIOException;

/** Manifests as JSON. What a later program adds is passed over by an earlier one. */
public final class PlayJson {
    private static final ObjectMapper JSON = JsonMapper.builder()
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();

    private PlayJson() {}

    public static byte[] write(PlayManifest manifest) {
        try {
            return JSON.writeValueAsBytes(manifest);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("plain records can be written", e);
        }
    }

    public static PlayManifest read(byte[] json) {
        try {
            return JSON.readValue(json, PlayManifest.class);
        } catch (IOException e) {
            throw new UncheckedIOException("no manifest", e);
        }
    }
}
