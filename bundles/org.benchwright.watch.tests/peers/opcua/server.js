/*
 * An OPC UA server for the tests, by node-opcua: prints "port N", serves two variables until standard input ends.
 * usage: node server.js PORT FOLDER EXPIRED
 *   PORT     0 takes any
 *   FOLDER   where it keeps its certificates
 *   EXPIRED  "expired": its own certificate was valid in the past only
 * Lines "state N" and "ambient X" set what it reads; "skew SECONDS" shifts its clock; "sessions" prints how many are open.
 */
"use strict";
const path = require("path");
const net = require("net");
const { OPCUAServer } = require("node-opcua-server");
const { OPCUACertificateManager } = require("node-opcua-certificate-manager");
const { SecurityPolicy, MessageSecurityMode } = require("node-opcua-secure-channel");
const { Variant, DataType } = require("node-opcua-variant");
const { StatusCodes } = require("node-opcua-status-code");
const { DataValue } = require("node-opcua-data-value");

async function freePort(wanted) {
  if (wanted !== 0) {
    return wanted;
  }
  return new Promise((resolve) => {
    const probe = net.createServer().listen(0, "127.0.0.1", () => {
      const port = probe.address().port;
      probe.close(() => resolve(port));
    });
  });
}

(async () => {
  const folder = process.argv[3];
  const port = await freePort(Number(process.argv[2]));
  let state = 1;
  let ambient = 22.5;
  let skew = 0;
  const manager = new OPCUACertificateManager({ rootFolder: path.join(folder, "pki"), automaticallyAcceptUnknownCertificate: true });
  await manager.initialize();
  const options = {
    port,
    host: "127.0.0.1",
    hostname: "127.0.0.1",
    serverCertificateManager: manager,
    userCertificateManager: manager,
    securityPolicies: [SecurityPolicy.None, SecurityPolicy.Basic256Sha256],
    securityModes: [MessageSecurityMode.None, MessageSecurityMode.SignAndEncrypt],
    allowAnonymous: true,
    disableDiscovery: true,
    serverInfo: { applicationUri: "urn:peer", productUri: "peer" },
  };
  if (process.argv[4] === "expired") {
    const file = path.join(folder, "expired.pem");
    await manager.createSelfSignedCertificate({
      applicationUri: "urn:peer", dns: ["localhost"], ip: ["127.0.0.1"], subject: "/CN=expired", outputFile: file,
      startDate: new Date("2020-01-01T00:00:00Z"), validity: 30,
    });
    options.certificateFile = file;
    options.privateKeyFile = manager.privateKey;
  }
  const server = new OPCUAServer(options);
  await server.initialize();
  const space = server.engine.addressSpace;
  const own = space.getOwnNamespace();
  const read = (type, value) => ({ timestamped_get: () => {
    const now = new Date(Date.now() + 1000 * skew);
    return new DataValue({ value: new Variant({ dataType: type, value: value() }), statusCode: StatusCodes.Good, sourceTimestamp: now });
  }, timestamped_set: (value, done) => { console.log("WRITE"); done(null, StatusCodes.Good); } });
  const parent = space.rootFolder.objects;
  const unit = own.addObject({ organizedBy: parent, browseName: "Unit" });
  own.addVariable({ componentOf: unit, nodeId: "s=Unit.State", browseName: "State", dataType: "Int32", minimumSamplingInterval: 50, value: read(DataType.Int32, () => state) });
  own.addVariable({ componentOf: unit, nodeId: "s=Unit.Ambient", browseName: "Ambient", dataType: "Double", minimumSamplingInterval: 50, value: read(DataType.Double, () => ambient) });
  own.addVariable({ componentOf: unit, nodeId: "s=Unit.Name", browseName: "Name", dataType: "String", minimumSamplingInterval: 50, value: read(DataType.String, () => "C16") });
  await server.start();
  console.log("port " + port);
  let rest = "";
  process.stdin.on("data", (data) => {
    const lines = (rest + data).split("\n");
    rest = lines.pop();
    for (const line of lines) {
      const [what, value] = line.split(" ");
      if (what === "state") state = Number(value);
      if (what === "ambient") ambient = Number(value);
      if (what === "skew") skew = Number(value);
      console.log(what === "sessions" ? server.engine.currentSessionCount : "ok");
    }
  });
  process.stdin.on("end", () => process.exit(0));
})().catch((failure) => {
  console.error(failure);
  process.exit(1);
});
