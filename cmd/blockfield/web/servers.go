package web

import (
	"fmt"
	"strings"
)

// headerNames are the headers of every answer, in the order that they are written down in.
var headerNames = []string{
	"Content-Security-Policy", "X-Content-Type-Options", "Referrer-Policy",
	"Cross-Origin-Opener-Policy", "Cross-Origin-Resource-Policy", "Permissions-Policy",
}

// addServers writes down for common servers what Handler sends. None of these files is for
// visitors: the service worker keeps none of them, and some servers hide them.
func (s *Site) addServers(folder string) {
	for name, text := range map[string]string{
		"headers.txt":        s.headersText(),
		"_headers":           s.headersOfHosts(folder),
		".htaccess":          s.apache(),
		"servers/nginx.conf": s.nginx(),
		"servers/Caddyfile":  s.caddy(),
	} {
		s.add(name, []byte(text), false)
	}
}

// each writes a line for every header.
func (s *Site) each(format string) string {
	var b strings.Builder
	for _, name := range headerNames {
		fmt.Fprintf(&b, format+"\n", name, s.headers().Get(name))
	}
	return b.String()
}

// headersText tells whoever puts the files on a server of their own what that
// server should send.
func (s *Site) headersText() string {
	return "A server of these files should send these headers with every answer:\n\n" + s.each("%s: %s") +
		fmt.Sprintf("\nFor files below a-…/ also\n\nCache-Control: %s\n\nand for all others\n\nCache-Control: %s\n", keepForEver, askAgain) + `
Modules (.wasm) are application/wasm, scripts text/javascript. A file with .br or .gz
behind its name is the same file compressed, to be sent in its place with Content-Encoding.

The same is written down for hosts that read _headers, for Apache (.htaccess), nginx and
Caddy (servers/). The page itself carries the policy too, all but frame-ancestors.
`
}

// headersOfHosts is for hosts of static files that read a file _headers. They ask again
// for what no rule names; a header that two rules give would be sent twice.
func (s *Site) headersOfHosts(folder string) string {
	return "/*\n" + s.each("  %s: %s") + fmt.Sprintf("/%s/*\n  Cache-Control: %s\n", folder, keepForEver)
}

// apache is for a folder of the Apache HTTP server that may have a file .htaccess.
func (s *Site) apache() string {
	return `# For the Apache HTTP server 2.4 with mod_headers; mod_rewrite sends the compressed files.
Options -Indexes
<Files ".ht*">
  Require all denied
</Files>
AddType application/wasm .wasm
AddType text/javascript .js
AddType application/manifest+json .webmanifest
<IfModule mod_headers.c>
` + s.each("  Header always set %s \"%s\"") + fmt.Sprintf(`  Header set Cache-Control "%s" "expr=%%{REQUEST_URI} !~ m#/a-[0-9a-f]{%d}/#"
  Header set Cache-Control "%s" "expr=%%{REQUEST_URI} =~ m#/a-[0-9a-f]{%d}/#"
  Header append Vary Accept-Encoding
</IfModule>
<IfModule mod_rewrite.c>
  RewriteEngine On
  RewriteRule ^$ index.html
  RewriteCond %%{HTTP:Accept-Encoding} \bbr\b
  RewriteCond %%{REQUEST_FILENAME}.br -f
  RewriteRule !\.(br|gz)$ %%{REQUEST_URI}.br [L,E=no-gzip:1,E=no-brotli:1]
  RewriteCond %%{HTTP:Accept-Encoding} \bgzip\b
  RewriteCond %%{REQUEST_FILENAME}.gz -f
  RewriteRule !\.(br|gz)$ %%{REQUEST_URI}.gz [L,E=no-gzip:1,E=no-brotli:1]
</IfModule>
RemoveLanguage .br
RemoveType .gz
AddEncoding br .br
AddEncoding gzip .gz
`, askAgain, hashLength, keepForEver, hashLength)
}

// nginx is for the block http of nginx.
func (s *Site) nginx() string {
	return fmt.Sprintf(`# For nginx, inside of http { … }; change the name, the folder and, for https, the lines to listen.
map $uri $blockfield_cache {
    default "%s";
    "~/a-[0-9a-f]{%d}/" "%s";
}
server {
    listen 80;
    server_name blocks.example.org;
    root /srv/blockfield;
    gzip_vary on;
    gzip_static on; # sends the files .gz; with the module for brotli: brotli_static on;
    location ~ \.webmanifest$ { types { } default_type application/manifest+json; }
    location ~ \.wasm$ { types { } default_type application/wasm; }
    location ~ ^/(\.htaccess|_headers|servers/) { return 404; }
`, askAgain, hashLength, keepForEver) + s.each("    add_header %s \"%s\" always;") + `    add_header Cache-Control $blockfield_cache always;
}
`
}

// caddy is a Caddyfile.
func (s *Site) caddy() string {
	return `# For Caddy 2; change the name and the folder.
blocks.example.org {
	root * /srv/blockfield
	header {
` + s.each("\t\t%s \"%s\"") + fmt.Sprintf(`	}
	@manifest path *.webmanifest
	header @manifest Content-Type application/manifest+json
	@kept path_regexp ^.*/a-[0-9a-f]{%d}/
	@asked not path_regexp ^.*/a-[0-9a-f]{%d}/
	header @kept Cache-Control "%s"
	header @asked Cache-Control "%s"
	@apart path /.htaccess /_headers /servers/*
	respond @apart 404
	file_server {
		precompressed br gzip
	}
}
`, hashLength, hashLength, keepForEver, askAgain)
}
