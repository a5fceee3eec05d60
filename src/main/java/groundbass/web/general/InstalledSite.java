package groundbass.web.general;

import com.fasterxml.jackson.annotation.JsonProperty;
import groundbass.web.view.Assets;
import java.util.List;

/** The site as an application of a device: members of a web application manifest (W3C Web Application Manifest). */
record InstalledSite(
        String id,
        String name,
        @JsonProperty("short_name") String shortName,
        String description,
        String lang,
        @JsonProperty("start_url") String startUrl,
        String scope,
        String display,
        @JsonProperty("theme_color") String themeColor,
        @JsonProperty("background_color") String backgroundColor,
        List<Icon> icons) {
    static final String MEDIA_TYPE =
            "application/manifest+json"; // W3C Web Application Manifest, section "IANA considerations"

    private static final String ROOT = "/";
    /** The paper of the light scheme in groundbass.css; pages themselves name that of either scheme. */
    private static final String PAPER = "#f8f4ec";

    /** @param purpose {@code any}, or {@code maskable} where a device may cut it to a shape of its own */
    record Icon(String src, String sizes, String type, String purpose) {}

    static InstalledSite of(String name, String description, String language, Assets assets) {
        var icons = List.of(
                new Icon(assets.versioned("icon.svg"), "any", "image/svg+xml", "any"),
                new Icon(assets.versioned("icon-192.png"), "192x192", "image/png", "any"),
                new Icon(assets.versioned("icon-512.png"), "512x512", "image/png", "any"),
                new Icon(assets.versioned("icon-masked.png"), "512x512", "image/png", "maskable"));
        return new InstalledSite(
                ROOT, name, name, description, language, ROOT, ROOT, "standalone", PAPER, PAPER, icons);
    }
}
