package groundbass.bench;

import groundbass.OutsideTools;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;

/** The anchor of downloads: nginx with sendfile, one process, no log, a configuration of its own. */
final class Nginx {
    private Nginx() {}

    static boolean isHere() {
        return OutsideTools.here().find("nginx").isPresent();
    }

    /** Serves a file of that size as {@code /bench.bin}. */
    static Child start(Path folder, int port, int size) throws IOException {
        var program = OutsideTools.here().find("nginx").orElseThrow();
        Files.createDirectories(folder.resolve("root"));
        var bytes = new byte[size];
        new Random(1).nextBytes(bytes);
        Files.write(folder.resolve("root/bench.bin"), bytes);
        var configuration = Files.writeString(folder.resolve("nginx.conf"), """
                daemon off;
                master_process off;
                pid FOLDER/pid;
                error_log FOLDER/error.log;
                events { worker_connections 256; }
                http {
                  access_log off;
                  sendfile on;
                  tcp_nopush on;
                  keepalive_requests 100000000;
                  client_body_temp_path FOLDER/body;
                  proxy_temp_path FOLDER/proxy;
                  fastcgi_temp_path FOLDER/fastcgi;
                  uwsgi_temp_path FOLDER/uwsgi;
                  scgi_temp_path FOLDER/scgi;
                  server { listen 127.0.0.1:PORT; root FOLDER/root; }
                }
                """.replace("FOLDER", folder.toString())
                .replace("PORT", Integer.toString(port)));
        return Child.start(
                folder.resolve("out.log"),
                List.of(program.toString(), "-c", configuration.toString(), "-p", folder.toString()));
    }
}
