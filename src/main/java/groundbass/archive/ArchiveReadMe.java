package groundbass.archive;

/** For whoever finds an archive in ten years. */
final class ArchiveReadMe {
    static final String TEXT = """
            This is one series of a Groundbass site, taken out of it to be kept or to be brought into another.

            series.properties     what the series is called, how its sheets look, when its lessons come out
            beginning/            what its new lessons begin with
            01-.../               a lesson:
              episode.properties    title, level, summary, credits, rights, settings
              line.txt              the line; exercise-1.txt and so on are further lines
              notes.md              what students read, Markdown
              groove.txt            drums of its own; script.txt: what is said in it
              walkthrough.json      where the educator's words replace the program's
              recordings.json       which recording is what, and when its bars begin
              recordings/           uploaded recordings
              pictures/             the pictures of the notes
              revisions/1/          the lesson as it was fixed, in the same files
              releases/1/           what students got: sheets, sounds, pages
              episode.json          ids, moments, and the digests of all these files
            manifest.json         what is in here, with digests

            It holds no students and no record of what they took. It may hold drafts, a script and rights that are not
            settled: what nobody was shown yet. Texts are UTF-8; moments are RFC 3339; digests are SHA-256.

            To bring it into a site:  java -jar groundbass.jar admin import FILE --data FOLDER
            or at the desk, under "Bring a series in".
            """;

    private ArchiveReadMe() {}
}
