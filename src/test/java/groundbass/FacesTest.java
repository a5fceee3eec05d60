package groundbass;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jdbi.v3.core.spi.JdbiPlugin;

/** What a room shows is what others name: the rest of it is not public. A test of another room is one of the others. */
@AnalyzeClasses(packages = "groundbass", importOptions = ImportOption.DoNotIncludePackageInfos.class)
class FacesTest {
    /** The start; the filter of logback.xml; and two whose constants the compiler copies to their users. */
    private static final Set<String> NAMED_ELSEWHERE = Set.of(
            "groundbass.Main",
            "groundbass.cli.FaultFilter",
            "groundbass.linetext.source.Limits",
            "groundbass.linetext.read.SettingReader");

    @ArchTest
    static void whatIsPublicHasAUserOutsideItsRoom(JavaClasses house) {
        var shown = shown(house);
        assertThat(shown).hasSizeGreaterThan(500);
        var hidden = shown.stream()
                .filter(type -> !hasUserOutside(type))
                .filter(type -> !isHandedOut(type, shown))
                .filter(type -> !isShownByTemplates(type))
                .filter(type -> !type.isAssignableTo(JdbiPlugin.class))
                .map(JavaClass::getName)
                .filter(name -> !NAMED_ELSEWHERE.contains(name))
                .toList();
        assertThat(hidden).as("public, and known to its own package alone").isEmpty();
    }

    /** What rooms show to others has one name for one thing; inside a room the room says what is meant. */
    @ArchTest
    static void noTwoThingsThatAreShownHaveOneName(JavaClasses house) {
        assertThat(shown(house)).extracting(JavaClass::getSimpleName).doesNotHaveDuplicates();
    }

    private static List<JavaClass> shown(JavaClasses house) {
        return house.stream()
                .filter(type -> type.isTopLevelClass() && type.getModifiers().contains(JavaModifier.PUBLIC))
                .filter(type ->
                        !type.getSource().orElseThrow().getUri().toString().contains("test-classes"))
                .toList();
    }

    private static boolean hasUserOutside(JavaClass type) {
        return withNested(type)
                .flatMap(each -> each.getDirectDependenciesToSelf().stream())
                .anyMatch(use -> !use.getOriginClass().getPackage().equals(type.getPackage()));
    }

    private static Stream<JavaClass> withNested(JavaClass type) {
        return Stream.concat(
                Stream.of(type), type.getPackage().getClasses().stream().filter(each -> each.getName()
                        .startsWith(type.getName() + "$")));
    }

    /** Whether something that others or templates use gives it to them, or throws it. */
    private static boolean isHandedOut(JavaClass type, List<JavaClass> shown) {
        return shown.stream()
                .filter(other -> other.getPackage().equals(type.getPackage()) && !other.equals(type))
                .filter(other -> hasUserOutside(other) || isShownByTemplates(other))
                .flatMap(other -> other.getMethods().stream())
                .filter(method -> method.getModifiers().contains(JavaModifier.PUBLIC)
                        || method.getOwner().isInterface())
                .anyMatch(method -> handedOut(method).contains(type));
    }

    private static Set<JavaClass> handedOut(JavaMethod method) {
        return Stream.concat(
                        method.getReturnType().getAllInvolvedRawTypes().stream(),
                        method.getThrowsClause().getTypes().stream().map(thrown -> thrown.toErasure()))
                .collect(Collectors.toSet());
    }

    /** A template reads a record through its public methods. */
    private static boolean isShownByTemplates(JavaClass type) {
        String room = type.getPackageName();
        return type.isRecord() && (room.startsWith("groundbass.web.") || room.equals("groundbass.cli"));
    }
}
