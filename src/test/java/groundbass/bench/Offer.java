package groundbass.bench;

import groundbass.bench.Wednesday.Deed;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * The paths of a lesson's page and of what it names.
 *
 * @param assets styles, scripts, typefaces
 * @param play the manifest of the line and each stem at its first tempo
 * @param files what is offered to take home
 */
record Offer(String page, List<String> assets, List<String> play, List<String> files) {
    private static final Pattern ASSET = Pattern.compile("(?:href|src)=\"(/assets/[^\"]+)\"");
    private static final Pattern MANIFEST = Pattern.compile("\"(/play/[^\"]+/line-play\\.json)\"");
    private static final Pattern STEM = Pattern.compile("\"([^\"/]+\\.opus)\"");
    private static final Pattern FILE = Pattern.compile("href=\"(/files/[^\"?]+\\.(?:pdf|mid|mp3|zip))\"");
    private static final int STEMS = 4;

    /** What the page offers now; what is still being made is missing. */
    static Offer of(URI site, String page) throws IOException, InterruptedException {
        String text = text(site.resolve(page));
        var play = new ArrayList<String>();
        for (String manifest : all(MANIFEST, text).stream().limit(1).toList()) {
            play.add(manifest);
            String folder = manifest.substring(0, manifest.lastIndexOf('/') + 1);
            all(STEM, text(site.resolve(manifest))).stream()
                    .limit(STEMS)
                    .map(folder::concat)
                    .forEach(play::add);
        }
        return new Offer(page, all(ASSET, text), play, all(FILE, text));
    }

    private static List<String> all(Pattern pattern, String text) {
        return pattern.matcher(text)
                .results()
                .map(found -> found.group(1).replace("&amp;", "&"))
                .distinct()
                .toList();
    }

    private static String text(URI address) throws IOException, InterruptedException {
        var answer = HttpClient.newHttpClient()
                .send(HttpRequest.newBuilder(address).build(), HttpResponse.BodyHandlers.ofString());
        if (answer.statusCode() != 200) {
            throw new IOException(address + " answers " + answer.statusCode());
        }
        return answer.body();
    }

    boolean isWhole() {
        return play.size() > STEMS && files.stream().anyMatch(file -> file.endsWith(".zip"));
    }

    /** The first that ends so. */
    String file(String ending) {
        return files.stream().filter(file -> file.endsWith(ending)).findFirst().orElseThrow();
    }

    /** The file that this reader takes: each of all in its turn. */
    private String file(int student) {
        return files.get(student % files.size());
    }

    /** All requests of a deed, the first of them for what was asked. */
    List<String> of(Deed deed, int student) {
        return switch (deed) {
            case PAGE -> {
                var all = new ArrayList<>(List.of(page));
                all.addAll(assets);
                yield all;
            }
            case PLAY -> play;
            case DOWNLOAD -> List.of(file(student));
        };
    }
}
