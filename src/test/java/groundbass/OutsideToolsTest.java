package groundbass;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.opentest4j.TestAbortedException;

class OutsideToolsTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(strings = {"1", "true", "TRUE", "yes", "woodpecker"})
    void aMissingProgramFailsOnABuildMachine(String ci) {
        var nowhere = new OutsideTools(folder.toString(), ci);
        assertThatThrownBy(() -> nowhere.need("qpdf"))
                .isInstanceOf(AssertionError.class)
                .hasMessageContaining("not installed: qpdf");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "0", "false", "False"})
    void aMissingProgramSkipsElsewhere(String ci) {
        var nowhere = new OutsideTools("", ci);
        assertThatThrownBy(() -> nowhere.need("qpdf", "pdftotext"))
                .isInstanceOf(TestAbortedException.class)
                .hasMessageContaining("not installed: qpdf or pdftotext");
    }

    @Test
    void aProgramOnThePathIsFound() throws IOException {
        var program = Files.createFile(folder.resolve("chromium"));
        var tools = new OutsideTools("nowhere" + java.io.File.pathSeparator + folder, "1");
        assertThat(tools.find("chromium")).as("not executable").isEmpty();
        assertThat(program.toFile().setExecutable(true)).isTrue();
        assertThat(tools.need("chromium-browser", "chromium")).isEqualTo(program);
    }
}
