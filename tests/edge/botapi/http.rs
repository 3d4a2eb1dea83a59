//! Just enough HTTP/1.1 for one client (RFC 9112): one request at a time a connection, bodies with a length.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::{TcpListener, TcpStream};
use std::sync::Arc;
use std::sync::atomic::Ordering;
use std::time::SystemTime;

use chrono::{DateTime, TimeDelta, Utc};
use serde_json::Value;

use super::methods::{self, Outcome};
use super::{Fault, Shared, TOKEN};

pub(super) fn serve(listener: &TcpListener, shared: &Arc<Shared>) {
    for stream in listener.incoming() {
        if shared.closed.load(Ordering::SeqCst) {
            return;
        }
        let (Ok(stream), shared) = (stream, shared.clone()) else {
            continue;
        };
        // a client that goes away in the middle is no news: it may have been killed
        std::thread::spawn(move || drop(converse(stream, &shared)));
    }
}

fn converse(stream: TcpStream, shared: &Shared) -> std::io::Result<()> {
    stream.set_nodelay(true)?;
    let mut reader = BufReader::new(stream.try_clone()?);
    let mut writer = stream;
    while let Some((path, body)) = request(&mut reader)? {
        if let Some(name) = path.strip_prefix(&format!("/file/bot{TOKEN}/photos/")) {
            let file = shared.lock().files.get(name).cloned();
            shared.lock().asked.push(("file".into(), name.into()));
            let fault = shared.lock().fault("file");
            match (file, fault) {
                (_, Some(Fault::Status(status, what))) => answer(&mut writer, status, what)?,
                (Some(bytes), None) => {
                    let head = format!("HTTP/1.1 200 X\r\ncontent-length: {}\r\n\r\n", bytes.len());
                    writer.write_all(head.as_bytes())?;
                    writer.write_all(&bytes)?;
                }
                (None, None) => answer(&mut writer, 404, "")?,
                (_, Some(_)) => return Ok(()),
            }
            continue;
        }
        let Some(method) = path
            .strip_prefix(&format!("/bot{TOKEN}/"))
            .map(str::to_lowercase)
        else {
            answer(
                &mut writer,
                401,
                r#"{"ok":false,"error_code":401,"description":"Unauthorized"}"#,
            )?;
            continue;
        };
        let body: Value = serde_json::from_slice(&body).unwrap_or(Value::Null);
        let fault = {
            let mut state = shared.lock();
            state.asked.push((method.clone(), body.clone()));
            state.fault(&method)
        };
        if let Some(Fault::Slow(wait)) = fault {
            std::thread::sleep(wait);
        }
        match fault {
            None | Some(Fault::Slow(_)) => {
                let Outcome { status, body } = methods::call(&method, &body, shared);
                let date = shared.lock().ahead_s.map(date);
                answer_dated(&mut writer, status, &body.to_string(), date.as_deref())?;
            }
            Some(Fault::Status(status, what)) => {
                let body =
                    serde_json::json!({"ok": false, "error_code": status, "description": what});
                answer(&mut writer, status, &body.to_string())?;
            }
            Some(Fault::Flood(seconds)) => {
                let Outcome { status, body } = methods::flood(seconds);
                answer(&mut writer, status, &body.to_string())?;
            }
            Some(Fault::Garbage) => answer(&mut writer, 200, "<html>gateway</html>")?,
            Some(Fault::Reset) => return Ok(()),
            Some(fault @ (Fault::Torn | Fault::DoneAndTorn)) => {
                if matches!(fault, Fault::DoneAndTorn) {
                    methods::call(&method, &body, shared);
                }
                return writer.write_all(
                    b"HTTP/1.1 200 OK\r\ncontent-length: 500\r\n\r\n{\"ok\":true,\"resu",
                );
            }
        }
    }
    Ok(())
}

/// A date as HTTP prints it (RFC 9110, 5.6.7), so many seconds from now.
fn date(ahead_s: i64) -> String {
    let now = DateTime::<Utc>::from(SystemTime::now()) + TimeDelta::seconds(ahead_s);
    now.format("%a, %d %b %Y %H:%M:%S GMT").to_string()
}

fn request(reader: &mut BufReader<TcpStream>) -> std::io::Result<Option<(String, Vec<u8>)>> {
    let mut line = String::new();
    if reader.read_line(&mut line)? == 0 {
        return Ok(None);
    }
    let path = line.split(' ').nth(1).unwrap_or_default().to_owned();
    let mut length = 0;
    loop {
        let mut header = String::new();
        reader.read_line(&mut header)?;
        let header = header.trim().to_lowercase();
        if header.is_empty() {
            break;
        }
        if let Some(value) = header.strip_prefix("content-length:") {
            length = value.trim().parse().unwrap_or(0);
        }
    }
    let mut body = vec![0; length];
    reader.read_exact(&mut body)?;
    Ok(Some((path, body)))
}

fn answer(writer: &mut TcpStream, status: u16, body: &str) -> std::io::Result<()> {
    answer_dated(writer, status, body, None)
}

fn answer_dated(
    writer: &mut TcpStream,
    status: u16,
    body: &str,
    date: Option<&str>,
) -> std::io::Result<()> {
    let date = date
        .map(|date| format!("date: {date}\r\n"))
        .unwrap_or_default();
    let head = format!(
        "HTTP/1.1 {status} X\r\n{date}content-type: application/json\r\ncontent-length: {}\r\n\r\n",
        body.len()
    );
    writer.write_all(format!("{head}{body}").as_bytes())
}
