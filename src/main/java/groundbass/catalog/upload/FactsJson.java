package groundbass.catalog.upload;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import groundbass.audio.AudioFacts;
import groundbass.audio.AudioFormat;
import java.time.Duration;

/** The facts of an upload as JSON text in its row. */
final class FactsJson {
    private static final ObjectMapper JSON = JsonMapper.builder()
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();

    private record Written(AudioFormat format, int sampleRate, int channels, int bitRate, long milliseconds) {}

    private FactsJson() {}

    static String write(AudioFacts facts) {
        try {
            return JSON.writeValueAsString(new Written(
                    facts.format(),
                    facts.sampleRate(),
                    facts.channels(),
                    facts.bitRate(),
                    facts.duration().toMillis()));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a record of numbers can be written", e);
        }
    }

    /** @throws IllegalArgumentException where the text is not of {@link #write} */
    static AudioFacts read(String text) {
        try {
            var written = JSON.readValue(text, Written.class);
            return new AudioFacts(
                    written.format(),
                    written.sampleRate(),
                    written.channels(),
                    written.bitRate(),
                    Duration.ofMillis(written.milliseconds()));
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("not the facts of an upload: " + e.getOriginalMessage(), e);
        }
    }
}
