package groundbass;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaConstructor;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.syntax.ArchRuleDefinition;
import java.sql.ResultSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.mapper.ColumnMapper;
import org.jdbi.v3.core.mapper.RowMapper;

/** Each part of a site is made once, in {@code site}; and repositories have one shape. */
@AnalyzeClasses(
        packages = "groundbass",
        importOptions = {ImportOption.DoNotIncludeTests.class, ImportOption.DoNotIncludePackageInfos.class})
class WiringTest {
    private static final String WIRING = "groundbass.site";

    /** Where parts stand that keep rows, or are made of such. */
    private static final List<String> ROOMS = List.of("catalog", "post", "release", "audience", "publishing", "demo");

    /** What is made with the database, or with a part that is. */
    private static Set<JavaClass> parts(JavaClasses house) {
        var parts = new HashSet<JavaClass>();
        boolean grown = true;
        while (grown) {
            grown = house.stream()
                    .filter(type -> isPart(type, parts))
                    .map(parts::add)
                    .reduce(false, (a, b) -> a | b);
        }
        assertThat(parts).extracting(JavaClass::getSimpleName).contains("Episodes", "Publisher", "Downloads", "Outbox");
        return parts;
    }

    private static boolean isPart(JavaClass type, Set<JavaClass> parts) {
        return ROOMS.stream().anyMatch(room -> type.getPackageName().startsWith("groundbass." + room))
                && type.isTopLevelClass()
                && type.getConstructors().stream()
                        .flatMap(constructor -> constructor.getRawParameterTypes().stream())
                        .anyMatch(given -> given.isEquivalentTo(Jdbi.class) || parts.contains(given));
    }

    /** The class of each call from elsewhere; a constructor that only leads to another of its class counts as that other. */
    private static List<String> makers(JavaClass part) {
        return part.getConstructors().stream()
                .map(JavaConstructor::getCallsOfSelf)
                .flatMap(Set::stream)
                .filter(call -> !call.getOriginOwner().equals(part))
                .map(JavaAccess::getOriginOwner)
                .map(JavaClass::getName)
                .toList();
    }

    @ArchTest
    static void aPartIsMadeByOneClassAndByTheWiringOnce(JavaClasses house) {
        assertThat(parts(house)).allSatisfy(part -> {
            var makers = makers(part);
            assertThat(Set.copyOf(makers)).as("who makes " + part.getName()).hasSizeLessThanOrEqualTo(1);
            assertThat(makers).filteredOn(maker -> maker.startsWith(WIRING)).hasSizeLessThanOrEqualTo(1);
        });
    }

    /** A part that its room alone knows may be the inside of another. */
    @ArchTest
    static void aPartThatOthersMayNameIsMadeByTheWiring(JavaClasses house) {
        var open = parts(house).stream()
                .filter(part -> part.getModifiers().contains(JavaModifier.PUBLIC))
                .filter(part -> part.getConstructors().stream()
                        .anyMatch(constructor -> constructor.getModifiers().contains(JavaModifier.PUBLIC)))
                .toList();
        assertThat(open).isNotEmpty().allSatisfy(part -> assertThat(makers(part))
                .as("who makes " + part.getName())
                .allSatisfy(maker -> assertThat(maker).startsWith(WIRING)));
    }

    /**
     * Rows are read as records, and values as the plugins of jdbi say; a class that reads a row by hand says it again. A
     * backup reads every row, whatever it means, and what was migrated is asked before there is a jdbi.
     */
    @ArchTest
    static final com.tngtech.archunit.lang.ArchRule rowsAreReadByRegistration = ArchRuleDefinition.noClasses()
            .that()
            .resideOutsideOfPackages("groundbass.store", "groundbass.store.migration", "groundbass.backup")
            .should()
            .dependOnClassesThat()
            .areAssignableTo(ResultSet.class)
            .orShould()
            .implement(RowMapper.class)
            .orShould()
            .implement(ColumnMapper.class);

    /** jdbi lends one handle to a thread, so what is called within a transaction takes part in it. */
    @ArchTest
    static void noMethodHasATwinThatTakesAHandle(JavaClasses house) {
        var twins = house.stream()
                .flatMap(type -> type.getMethods().stream())
                .filter(WiringTest::takesHandle)
                .filter(method -> method.getOwner().getMethods().stream().anyMatch(other -> isTwin(method, other)))
                .map(JavaMethod::getFullName)
                .collect(Collectors.toSet());
        assertThat(twins).isEmpty();
        assertThat(house.stream().flatMap(type -> type.getMethods().stream()).filter(WiringTest::takesHandle))
                .isNotEmpty();
    }

    private static boolean takesHandle(JavaMethod method) {
        var given = method.getRawParameterTypes();
        return !method.getModifiers().contains(JavaModifier.PRIVATE)
                && !given.isEmpty()
                && given.get(0).isEquivalentTo(Handle.class);
    }

    private static boolean isTwin(JavaMethod method, JavaMethod other) {
        var given = method.getRawParameterTypes();
        return other.getName().equals(method.getName())
                && other.getRawParameterTypes().equals(given.subList(1, given.size()));
    }
}
