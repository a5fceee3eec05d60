package groundbass.store;

import groundbass.store.fault.Causes;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Properties;

/** The first connection to a database, made before its pool, so that what is wrong can be told in a sentence. */
final class FirstConnection {
    private static final String POSTGRES = "jdbc:postgresql:";
    private static final int FILE_CORRUPTED = 90030; // H2's ErrorCode.FILE_CORRUPTED_1
    private static final String STORE_FAULT = "MVStoreException";
    private static final int OLDEST = 15; // merge

    private FirstConnection() {}

    /** @throws CannotOpen where the database does not answer, refuses us, or is damaged */
    static Connection open(String url, String user, String password) throws SQLException {
        return open(url, user, password, "groundbass");
    }

    /** @param name how a server lists the connection */
    static Connection open(String url, String user, String password, String name) throws SQLException {
        var properties = properties(url);
        if (url.startsWith(POSTGRES)) {
            properties.setProperty("ApplicationName", name);
        }
        properties.setProperty("user", user);
        properties.setProperty("password", password);
        try {
            var connection = DriverManager.getConnection(url, properties);
            refuseOld(connection);
            return connection;
        } catch (SQLException e) {
            if (isDamaged(e)) {
                throw new CannotOpen(
                        "The database file is damaged and cannot be opened: " + firstLine(e) + ". Restore the data"
                                + " folder from a backup; keep the damaged one until that is done.",
                        e);
            }
            if (url.startsWith(POSTGRES)) {
                throw new CannotOpen(
                        "The database " + withoutParameters(url) + " cannot be used: " + firstLine(e) + " See that its"
                                + " server runs, and check --database-url, --database-user and the password.",
                        e);
            }
            throw e;
        }
    }

    private static void refuseOld(Connection connection) throws SQLException {
        var about = connection.getMetaData();
        if (isTooOld(about.getDatabaseProductName(), about.getDatabaseMajorVersion())) {
            connection.close();
            throw new CannotOpen("The database server is PostgreSQL " + about.getDatabaseMajorVersion()
                    + ". This program needs " + OLDEST + " or a newer one.");
        }
    }

    static boolean isTooOld(String product, int major) {
        return product.equals("PostgreSQL") && major < OLDEST;
    }

    /** How long to wait for a server that does not answer: readers wait as long. What it says of a fault names no row. */
    static Properties properties(String url) {
        var properties = new Properties();
        if (url.startsWith(POSTGRES)) {
            properties.setProperty("connectTimeout", "3");
            properties.setProperty("socketTimeout", "20");
            properties.setProperty("tcpKeepAlive", "true");
            properties.setProperty("logServerErrorDetail", "false");
        }
        return properties;
    }

    private static boolean isDamaged(SQLException e) {
        return e.getErrorCode() == FILE_CORRUPTED
                || Causes.of(e)
                        .anyMatch(cause -> cause.getClass().getSimpleName().equals(STORE_FAULT)
                                && !String.valueOf(cause.getMessage()).contains("locked"));
    }

    private static String firstLine(SQLException e) {
        return String.valueOf(e.getMessage()).lines().findFirst().orElse("");
    }

    /** Parameters may hold a password. */
    private static String withoutParameters(String url) {
        return url.replaceFirst("\\?.*", "");
    }
}
