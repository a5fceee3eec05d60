package groundbass.backup;

import groundbass.identity.Sha256;

/** The names inside the file. */
final class Entries {
    static final String MANIFEST = "manifest.json";
    static final String READ_ME = "read-me.txt";
    static final String FILES = "files/";

    /** For whoever finds the file in ten years. */
    static final String WORDS = """
            This is a backup of a Groundbass site: everything that it needs to be set up anew.

            tables/    the rows of its database, a JSON object a line; times are RFC 3339, bytes Base64
            files/     what rows name by SHA-256: sheets, sounds, recordings
            manifest.json  what is in it, with digests

            It holds addresses of students and secrets of the site. Keep it where only those can read it who answer for
            the site, as long as your law allows and no longer.

            To restore it:  java -jar groundbass.jar admin restore FILE --data NEW-FOLDER
            """;

    private Entries() {}

    static String rows(String table) {
        return "tables/" + table + ".jsonl";
    }

    static String file(Sha256 sha256) {
        return FILES + sha256.hex();
    }
}
