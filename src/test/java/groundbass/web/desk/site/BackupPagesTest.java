package groundbass.web.desk.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;

import groundbass.web.Site;
import groundbass.web.desk.Studio;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

class BackupPagesTest {
    static final Studio studio = new Studio();

    @AfterAll
    static void close() {
        studio.close();
    }

    @Test
    void theSiteIsDownloadedByWhoeverKnowsThePassword() throws IOException {
        String page = studio.browser().get("/desk/backup").asString();
        assertThat(Studio.mistakes(page)).isEmpty();

        studio.form()
                .formParam("present", "not the password")
                .post("/desk/backup")
                .then()
                .statusCode(422)
                .body(containsString("id=\"present-problem\""));

        var answer = studio.form().formParam("present", Site.PASSWORD).post("/desk/backup");
        answer.then()
                .statusCode(200)
                .header("Content-Type", "application/zip")
                .header("Cache-Control", "no-store")
                .header("Content-Disposition", containsString("site-backup-"));
        assertThat(names(answer.asByteArray())).contains("tables/educator.jsonl", "manifest.json");
        studio.browser().get("/desk/audit").then().body(containsString("Backup of the site made"));
    }

    private static ArrayList<String> names(byte[] zip) throws IOException {
        var names = new ArrayList<String>();
        try (var in = new ZipInputStream(new ByteArrayInputStream(zip))) {
            for (var entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                names.add(entry.getName());
            }
        }
        return names;
    }
}
