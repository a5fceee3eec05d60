package groundbass.release;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import groundbass.lesson.PageContent;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;

/** What a page says, as JSON. What a later program adds is passed over by an earlier one. */
public final class PageJson {
    /** A page without pictures says of them what it said before there were any: nothing. */
    private interface Sparing {
        @JsonInclude(JsonInclude.Include.NON_EMPTY)
        List<PageContent.PhotoContent> photos();
    }

    private static final ObjectMapper JSON = JsonMapper.builder()
            .addMixIn(PageContent.class, Sparing.class)
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();

    private PageJson() {}

    static byte[] write(PageContent content) {
        try {
            return JSON.writeValueAsBytes(content);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("plain records can be written", e);
        }
    }

    public static PageContent read(byte[] json) {
        try {
            return JSON.readValue(json, PageContent.class);
        } catch (IOException e) {
            throw new UncheckedIOException("not what a page says", e);
        }
    }
}
