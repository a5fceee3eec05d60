package groundbass.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.text.Messages;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;

/** What a sheet says of itself is true: judged by an independent validator against ISO 19005-2 and ISO 14289-1. */
class SheetConformanceTest {
    private static final Path LESSON = Path.of("seed-data/harbour-rounds/01-rope-and-pulley");

    private static final Messages ENGLISH = Messages.of(Locale.ENGLISH);

    @BeforeAll
    static void findTheValidator() {
        VeraGreenfieldFoundryProvider.initialise();
    }

    @ParameterizedTest
    @EnumSource(names = {"PDFA_2_A", "PDFUA_1"})
    void aDemoSheetWithItsExercisesConforms(PDFAFlavour standard) throws Exception {
        try (var parser = Foundries.defaultInstance().createParser(new ByteArrayInputStream(sheet()), standard);
                var validator = Foundries.defaultInstance().createValidator(standard, false)) {
            List<String> failures = validator.validate(parser).getTestAssertions().stream()
                    .filter(assertion -> assertion.getStatus() == TestAssertion.Status.FAILED)
                    .map(assertion -> assertion.getRuleId().getClause() + " " + assertion.getMessage() + " at "
                            + assertion.getLocation().getContext())
                    .toList();
            assertThat(failures).isEmpty();
        }
    }

    private static byte[] sheet() throws IOException {
        var main = LineText.read(Files.readString(LESSON.resolve("line.txt"))).line();
        var exercise = LineText.read(Files.readString(LESSON.resolve("exercise-1.txt")))
                .line();
        return new Sheets(ENGLISH)
                .pdf(List.of(ToldLine.of(main, ENGLISH), ToldLine.of(exercise, ENGLISH)), Sheets.Imprint.of(main));
    }
}
