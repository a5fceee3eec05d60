package groundbass.web.shell;

/** Pages that belong together: a small class that names its routes and has one short method for each. */
@FunctionalInterface
public interface PageGroup {
    void addTo(Routes routes);
}
