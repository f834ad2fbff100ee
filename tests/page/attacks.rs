//! What a stranger might try, from another page, another machine's name, or another program on this machine.

use std::{
    io::{Read, Write},
    net::TcpStream,
    thread,
    time::{Duration, Instant},
};

use super::table::{Table, demo, read};

const DRAW: &str = r#"{"changes":[]}"#;

#[test]
fn every_page_with_its_policy_and_never_kept() {
    let table = Table::of("policy", &demo("stroke"));
    for name in ["", "sheet.css", "sheet.js", "words.json", "lines.css", "nothing.js"] {
        let reply = table.get(name);
        assert_eq!(reply.status, if name == "nothing.js" { 404 } else { 200 }, "{name}");
        assert!(reply.head.contains("content-security-policy: default-src 'none'; script-src 'self';"));
        assert!(reply.head.contains("frame-ancestors 'none'"));
        assert!(reply.head.contains("cache-control: no-store"));
        assert!(reply.head.contains("x-content-type-options: nosniff"));
        assert!(!reply.head.contains("access-control-"));
    }
}

#[test]
fn only_on_the_loopback_address() {
    let table = Table::of("loopback", &demo("stroke"));
    let sockets = std::fs::read_to_string("/proc/net/tcp").unwrap();
    let listening = format!(":{:04X}", table.port);
    let rows: Vec<&str> = sockets
        .lines()
        .filter(|row| {
            let mut cells = row.split_whitespace().skip(1);
            cells.next().is_some_and(|local| local.ends_with(&listening)) && cells.nth(1) == Some("0A")
        })
        .collect();
    assert_eq!(rows.len(), 1, "{rows:?}");
    assert!(rows[0].contains("0100007F:"), "{rows:?}");
}

#[test]
fn foreign_host_turned_away() {
    let table = Table::of("host", &demo("stroke"));
    for host in
        ["Host: rowing.example", "Host: 127.0.0.1", "Host: 127.0.0.1:1", "Host: localhost.", "X-None: 1"]
    {
        let reply =
            table.raw(&format!("GET /{}/ HTTP/1.1\r\n{host}\r\nConnection: close\r\n\r\n", table.key));
        assert!([400, 421].contains(&reply.status), "{host}: {}", reply.status);
        assert!(!reply.text().contains("<html"));
    }
    let twice = format!(
        "GET /{0}/ HTTP/1.1\r\nHost: 127.0.0.1:{1}\r\nHost: rowing.example\r\nConnection: close\r\n\r\n",
        table.key, table.port
    );
    assert!([400, 421].contains(&table.raw(&twice).status));
    let by_name = format!(
        "GET /{0}/ HTTP/1.1\r\nHost: localhost:{1}\r\nConnection: close\r\n\r\n",
        table.key, table.port
    );
    assert_eq!(table.raw(&by_name).status, 200);
}

#[test]
fn foreign_origin_turned_away() {
    let table = Table::of("origin", &demo("stroke"));
    let own = format!("http://127.0.0.1:{}", table.port);
    for origin in ["http://rowing.example", "null", "https://127.0.0.1", "http://127.0.0.1:1"] {
        let headers = table.usual().replace(&own, origin);
        let reply = table.raw(&table.posted("draw", DRAW, &headers));
        assert_eq!(reply.status, 403, "{origin}");
    }
    assert_eq!(table.post("draw", DRAW).status, 200);
}

#[test]
fn no_key_no_answer() {
    let table = Table::of("key", &demo("stroke"));
    let before = table.text();
    let save = r#"{"changes":[["thigh.front","1.9"]],"edition":1}"#;
    let without = table.usual().replace(&format!("X-Breeks-Key: {}\r\n", table.key), "");
    let wrong = table.usual().replace(&table.key, &"0".repeat(32));
    for headers in [without, wrong] {
        assert_eq!(table.raw(&table.posted("save", save, &headers)).status, 403);
    }
    let wrong_place = table.posted("save", save, &table.usual()).replacen(&table.key, &"0".repeat(32), 1);
    assert_eq!(table.raw(&wrong_place).status, 403);
    let look = format!("GET / HTTP/1.1\r\nHost: 127.0.0.1:{}\r\nConnection: close\r\n\r\n", table.port);
    assert_eq!(table.raw(&look).status, 403);
    let form = table.usual().replace("application/json", "text/plain");
    assert_eq!(table.raw(&table.posted("save", save, &form)).status, 415);
    assert_eq!(table.text(), before);
}

#[test]
fn two_runs_with_two_keys() {
    let text = demo("stroke");
    let (one, other) = (Table::of("key-one", &text), Table::of("key-other", &text));
    assert_ne!(one.key, other.key);
    assert_eq!(one.key.len(), 32);
}

#[test]
fn no_way_out_of_the_list_of_parts() {
    let table = Table::of("traversal", &demo("stroke"));
    for name in [
        "../file.toml",
        "..%2ffile.toml",
        "%2e%2e/%2e%2e/etc/passwd",
        "file.toml",
        "//etc/passwd",
        "sheet.css%00.toml",
    ] {
        let reply = table.get(name);
        assert_ne!(reply.status, 200, "{name}");
        assert!(!reply.text().contains("measurements"), "{name}");
    }
    let taken = table.post("take", r#"{"file":"../../etc/passwd"}"#);
    assert!(taken.text().contains("there is no file"), "{}", taken.text());
    // nor may a change name a recipe's file that is none
    let block = table.post("draw", r#"{"changes":[["trousers.block","/etc/passwd"]]}"#);
    assert!(!block.text().contains("root:"), "{}", block.text());
}

#[test]
fn hundred_megabytes_refused_unread() {
    let table = Table::of("large", &demo("stroke"));
    let head = format!(
        "POST /{}/ask/draw HTTP/1.1\r\n{}Content-Length: 104857600\r\nConnection: close\r\n\r\n",
        table.key,
        table.usual()
    );
    let before = table.most_memory();
    let mut stream = table.connect();
    stream.write_all(head.as_bytes()).unwrap();
    let block = vec![b' '; 1 << 20];
    let mut sent = 0;
    while sent < 100 << 20 && stream.write_all(&block).is_ok() {
        sent += block.len();
    }
    drop(stream);
    assert!(table.most_memory() < before + 20_000, "held {} kB", table.most_memory());
    assert_eq!(table.post("draw", DRAW).status, 200);
    // told so, where the other side listens
    let mut stream = table.connect();
    stream.write_all(head.as_bytes()).unwrap();
    assert_eq!(read(&mut stream).status, 413);
}

#[test]
fn deep_and_many_changes_refused() {
    let table = Table::of("deep", &demo("stroke"));
    let deep = format!("{}{}", "[".repeat(30_000), "]".repeat(30_000));
    assert_eq!(table.post("draw", &deep).status, 400);
    let many: Vec<String> = (0..2_000).map(|_| r#"["thigh.front","1"]"#.to_owned()).collect();
    let reply = table.post("draw", &format!(r#"{{"changes":[{}]}}"#, many.join(",")));
    assert!(reply.text().contains("expected at most 300 changes"), "{}", reply.text());
    assert_eq!(table.post("draw", r#"{"changes":[["thigh.front","1"]],"more":1}"#).status, 400);
}

/// Connections that never finish their request hold their places for ten seconds, and no longer.
#[test]
fn slow_clients_do_not_keep_the_table() {
    let table = Table::of("slow", &demo("stroke"));
    let mut slow: Vec<TcpStream> = (0..80).map(|_| table.connect()).collect();
    for stream in &mut slow {
        stream.write_all(b"GET / HTTP/1.1\r\nHost: 127").unwrap();
    }
    let began = Instant::now();
    let drip = thread::spawn(move || {
        for _ in 0..14 {
            thread::sleep(Duration::from_secs(1));
            for stream in &mut slow {
                // closed by then, as it should be
                let _ = stream.write_all(b"0");
            }
        }
        slow
    });
    let reply = table.post("draw", DRAW);
    let took = began.elapsed();
    assert_eq!(reply.status, 200);
    assert!(took < Duration::from_secs(29), "{took:?}");
    let mut byte = [0];
    for mut stream in drip.join().unwrap().into_iter().take(32) {
        assert!(matches!(stream.read(&mut byte), Ok(0) | Err(_)), "still open");
    }
}

#[test]
fn thousand_events_a_second_answered_or_turned_away() {
    let table = Table::of("pace", &demo("stroke"));
    let began = Instant::now();
    let request = table.posted("draw", DRAW, &table.usual()).replace("Connection: close\r\n", "");
    let threads: Vec<_> = (0..4)
        .map(|_| {
            let (request, mut stream) = (request.clone(), table.connect());
            thread::spawn(move || {
                let mut counts = [0_u32; 2];
                for _ in 0..250 {
                    stream.write_all(request.as_bytes()).unwrap();
                    match one_of_many(&mut stream) {
                        200 => counts[0] += 1,
                        429 => counts[1] += 1,
                        other => panic!("{other}"),
                    }
                }
                counts
            })
        })
        .collect();
    let [mut drawn, mut refused] = [0, 0];
    for thread in threads {
        let counts = thread.join().unwrap();
        drawn += counts[0];
        refused += counts[1];
    }
    let seconds = began.elapsed().as_secs_f64();
    assert_eq!(drawn + refused, 1000);
    assert!(f64::from(drawn) <= 240.0 + 120.0 * seconds + 1.0, "{drawn} in {seconds} s");
    thread::sleep(Duration::from_millis(100));
    assert_eq!(table.post("draw", DRAW).status, 200);
    println!("1000 requests in {seconds:.2} s: {drawn} drawn, {refused} turned away");
}

/// Reads one answer of a connection that stays open; its status.
fn one_of_many(stream: &mut TcpStream) -> u16 {
    let mut head = Vec::new();
    let mut byte = [0];
    while !head.ends_with(b"\r\n\r\n") {
        stream.read_exact(&mut byte).unwrap();
        head.push(byte[0]);
    }
    let head = String::from_utf8(head).unwrap().to_lowercase();
    let length = head.split("content-length: ").nth(1).unwrap().split("\r\n").next().unwrap();
    let mut body = vec![0; length.parse().unwrap()];
    stream.read_exact(&mut body).unwrap();
    head.split(' ').nth(1).unwrap().parse().unwrap()
}

#[cfg(unix)]
#[test]
fn ended_while_an_event_stream_is_open() {
    let mut table = Table::of("ended", &demo("stroke"));
    let mut stream = table.connect();
    let request = format!("GET /{}/ask/events HTTP/1.1\r\nHost: 127.0.0.1:{}\r\n\r\n", table.key, table.port);
    stream.write_all(request.as_bytes()).unwrap();
    let mut some = [0; 64];
    assert!(stream.read(&mut some).unwrap() > 0);
    let id = table.process().id().to_string();
    assert!(std::process::Command::new("kill").args(["-TERM", &id]).status().unwrap().success());
    let began = Instant::now();
    while table.process().try_wait().unwrap().is_none() {
        assert!(began.elapsed() < Duration::from_secs(5), "still running");
        thread::sleep(Duration::from_millis(20));
    }
    assert!(table.process().wait().unwrap().success());
}
